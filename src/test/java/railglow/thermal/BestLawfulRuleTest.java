package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class BestLawfulRuleTest {
  private static final double ERROR = 1e-6;

  @Test
  void itNeedsMoreThanWaldsLeastAndLessThanTheDetectorsBounds() {
    double drift = 2.2;
    double wald = Math.log(1 / ERROR) / (drift * drift / 2);
    LookBounds bounds = LookBounds.of(4, 30, ERROR);
    double[] crossing = bounds.crossingProbabilities(drift);
    double ours = 0;
    for (int j = 0; j < crossing.length; j++) {
      ours += crossing[j] * (4 + j);
    }
    double best = BestLawfulRule.meanCycles(4, 30, ERROR, 1, drift);
    assertTrue(best > wald && best < ours, wald + " " + best + " " + ours);
  }

  @Test
  void whoMayLookOnlyOnceNeedsThatLook() {
    assertEquals(7, BestLawfulRule.meanCycles(7, 7, ERROR, 1, 2), 1e-6);
  }

  @Test
  void whatNeedNotBeFoundIsGivenUpSooner() {
    double sure = BestLawfulRule.meanCycles(4, 30, ERROR, 1, 1.1);
    assertTrue(BestLawfulRule.meanCycles(4, 30, ERROR, 0.7, 1.1) < sure);
  }
}
