package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class DriftFreeCyclesTest {
  private static final int CYCLES = 8;

  /** Quarter means of a body of first order that is cold before the first cycle, rise 1. */
  private static List<QuarterMeans> fromCold(double tauPeriods) {
    double kept = Math.exp(-0.25 / tauPeriods);
    double meanLeft = 4 * tauPeriods * (1 - kept);
    double state = 0;
    List<QuarterMeans> cycles = new ArrayList<>();
    for (int cycle = 0; cycle < CYCLES; cycle++) {
      Plane[] planes = new Plane[4];
      for (int quarter = 0; quarter < 4; quarter++) {
        double goal = quarter == 1 || quarter == 2 ? 1 : 0;
        float mean = (float) (goal + (state - goal) * meanLeft);
        planes[quarter] = new Plane(1, 1, new float[] {mean});
        state = goal + (state - goal) * kept;
      }
      cycles.add(
          new QuarterMeans(
              cycle, planes[0], planes[1], planes[2], planes[3], new int[] {12, 12, 12, 12}));
    }
    return cycles;
  }

  /** The start is where a drift bends most, and its first cycle has no neighbour before it. */
  @ParameterizedTest
  @ValueSource(doubles = {0.1, 0.3, 1, 3, 10})
  void aBodyThatStartsColdShowsWhatItWillShowWhenWarm(double tauPeriods) {
    DriftFreeCycles drift = new DriftFreeCycles();
    double inPhase = 0;
    double quadrature = 0;
    for (QuarterMeans means : fromCold(tauPeriods)) {
      ReducedCycle done = drift.next(means).orElse(null);
      inPhase += done == null ? 0 : done.inPhase()[0] / CYCLES;
      quadrature += done == null ? 0 : done.quadrature()[0] / CYCLES;
    }
    ReducedCycle last = drift.provisional().orElseThrow();
    inPhase += last.inPhase()[0] / CYCLES;
    quadrature += last.quadrature()[0] / CYCLES;
    ReducedCycle bend = drift.startBend().orElseThrow();
    inPhase -= bend.inPhase()[0] / CYCLES;
    quadrature -= bend.quadrature()[0] / CYCLES;
    FirstOrderResponse warm = FirstOrderResponse.of(tauPeriods, 1);
    assertEquals(1, Math.hypot(inPhase, quadrature) / warm.size(), 0.022);
  }

  @Test
  void aGapAmongTheFirstThreeCyclesLeavesTheirBendOpen() {
    DriftFreeCycles drift = new DriftFreeCycles();
    List<QuarterMeans> means = fromCold(1);
    drift.next(means.get(0));
    drift.next(means.get(1));
    drift.next(means.get(3));
    drift.next(means.get(4));
    drift.next(means.get(5));

    assertTrue(drift.startBend().isEmpty());
  }
}
