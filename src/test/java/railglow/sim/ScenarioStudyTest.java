package railglow.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import railglow.thermal.HeatSource;
import railglow.thermal.Look;

/** What is called on simulated boards; all of them are printed by ScenarioStudy. */
class ScenarioStudyTest {
  @Test
  void theLeakingCapacitorIsCalledEarlyAndNothingElseIs() {
    BenchScenario bench = BenchScenarios.hx12();
    List<Look> looks = ScenarioStudy.looks(bench, 1, 0.5, 12);
    List<HeatSource> sources = looks.get(looks.size() - 1).sources();
    assertEquals(1, sources.size(), sources::toString);
    assertEquals("C37", ScenarioStudy.nearest(bench, sources.get(0)));
    int first =
        looks.stream().filter(l -> !l.sources().isEmpty()).findFirst().orElseThrow().cycles();
    assertTrue(first <= 8, "first called at cycle " + first);
  }
}
