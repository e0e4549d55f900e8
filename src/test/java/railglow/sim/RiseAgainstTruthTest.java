package railglow.sim;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
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
}
