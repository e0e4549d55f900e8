package railglow.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import railglow.sim.heat.PlacedPart;
import railglow.thermal.HeatSource;
import railglow.thermal.Look;

/** What is stated of a simulated board against what its heat does under steady power. */
class RiseAgainstTruthTest {
  private static final int TEN_PERIODS_SECONDS = 20;

  @ParameterizedTest
  @CsvSource({"hx12,C37", "close-leaks,C36"})
  void everyLookOfARunStatesAnIntervalThatHoldsTheTrueRise(String board, String part) {
    BenchScenario bench = BenchScenarios.named(board).orElseThrow();
    double truth =
        RiseStudy.steadyRiseKelvin(
            bench, bench.board().part(part).orElseThrow(), TEN_PERIODS_SECONDS);
    List<Look> looks = ScenarioStudy.looks(bench, 1, 0.5, 40, 8);
    int stated = 0;
    for (Look look : looks) {
      for (HeatSource source : look.sources()) {
        if (ScenarioStudy.nearest(bench, source).equals(part)) {
          stated++;
          assertTrue(
              source.riseInterval95().contains(truth),
              () -> truth + " after " + look.cycles() + " cycles not in " + source);
          assertTrue(
              source.riseInterval95().high() < 3 * truth && source.riseInterval95().low() > 0,
              () -> "says nothing: " + source);
        }
      }
    }
    assertTrue(stated >= 3, "stated at " + stated + " looks");
  }

  /** Its image is more pointed than a Gaussian, and a stronger one's skirts reach over it. */
  @ParameterizedTest
  @CsvSource({"hx12,C37", "two-leaks,C37"})
  void everyLookOfARunStatesASwingThatHoldsTheTrueOneAndTheTruePlace(String board, String part) {
    BenchScenario bench = BenchScenarios.named(board).orElseThrow();
    PlacedPart placed = bench.board().part(part).orElseThrow();
    double truth = RiseStudy.swingKelvin(bench, placed, 3, 7);
    int stated = 0;
    for (Look look : ScenarioStudy.looks(bench, 1, 0.5, 40, 8)) {
      for (HeatSource source : look.sources()) {
        if (ScenarioStudy.nearest(bench, source).equals(part)) {
          stated++;
          assertTrue(
              source.swingInterval95().contains(truth),
              () -> truth + " after " + look.cycles() + " cycles not in " + source);
          assertEquals(truth, source.swingKelvin(), 0.15 * truth);
          assertEquals(bench.board().column(placed), source.column(), 0.6);
          assertEquals(bench.board().row(placed), source.row(), 0.6);
        }
      }
    }
    assertTrue(stated >= 3, "stated at " + stated + " looks");
  }
}
