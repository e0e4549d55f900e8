package railglow.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import railglow.thermal.HeatSource;
import railglow.thermal.Look;

/** What is called on simulated boards; all of them are printed by ScenarioStudy. */
class ScenarioStudyTest {
  private static final int FIRST_LOOK = 5;
  private static final int CAP = 150;

  /**
   * Thirty and more times the noise of a cycle, on a board that warms up while people move about.
   */
  @ParameterizedTest
  @CsvSource({"hx12, C37", "two-leaks, C40", "warm-path, FB1", "drifting, C37"})
  void aStrongSourceIsCalledAtTheFirstLawfulLook(String name, String part) {
    BenchScenario bench = BenchScenarios.named(name).orElseThrow();
    Look look = ScenarioStudy.looks(bench, 1, 0.5, CAP, FIRST_LOOK).get(0);
    assertFalse(look.sources().isEmpty(), "nothing called");
    assertEquals(part, ScenarioStudy.nearest(bench, look.sources().get(0)));
    assertEquals(List.of(), look.refused());
  }

  @Test
  void theLeakingCapacitorAloneIsCalledAndItsSkirtsRaiseNoAlarm() {
    BenchScenario bench = BenchScenarios.hx12();
    for (Look look : ScenarioStudy.looks(bench, 1, 0.5, CAP, 12)) {
      assertEquals(1, look.sources().size(), () -> look.sources().toString());
      assertEquals("C37", ScenarioStudy.nearest(bench, look.sources().get(0)));
      assertEquals(List.of(), look.refused());
    }
  }

  /** Its heat comes out late, beside the chip's edge, where a small capacitor is not far. */
  @Test
  void aShortUnderAChipIsCalledAtTheChip() {
    BenchScenario bench = BenchScenarios.named("short-in-chip").orElseThrow();
    int called = 0;
    for (Look look : ScenarioStudy.looks(bench, 1, 0.5, 20, 9)) {
      called += look.sources().isEmpty() ? 0 : 1;
      if (!look.sources().isEmpty()) {
        assertEquals("U6", ScenarioStudy.nearest(bench, look.sources().get(0)));
      }
    }
    assertTrue(called >= 4, called + " of 5 looks call it");
  }

  /**
   * Behind the package heat comes out by more than a third of a period late; its surroundings seem
   * to cool while the current flows, and what is farther off follows the next pulse.
   */
  @Test
  void ofAStrongShortUnderAChipNothingButTheChipIsCalledAndNothingIsRefused() {
    BenchScenario bench = BenchScenarios.named("short-in-chip").orElseThrow();
    for (Look look : ScenarioStudy.looks(bench, 1, 1, 60, 8)) {
      assertFalse(look.sources().isEmpty(), "not called after " + look.cycles());
      for (HeatSource source : look.sources()) {
        assertEquals("U6", ScenarioStudy.nearest(bench, source), source::toString);
      }
      assertEquals(List.of(), look.refused());
    }
  }

  @Test
  void onABoardWithoutAFaultNothingIsCalledOrRefused() {
    BenchScenario bench = BenchScenarios.named("healthy").orElseThrow();
    for (Look look : ScenarioStudy.looks(bench, 1, 0.5, CAP, 12)) {
      assertEquals(List.of(), look.sources());
      assertEquals(List.of(), look.refused());
    }
  }
}
