package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class DriftPartTest {
  /** Frames left out unevenly, otherwise in every cycle. */
  private static QuarterMeans drifting(int cycle, double slopePerPeriod) {
    double[][] frames = {
      {0.05 + 0.01 * cycle, 0.3}, {0.6, 0.9 - 0.02 * cycle}, {1.0, 1.2, 1.4}, {1.7, 1.95}
    };
    CycleTimes times = new CycleTimes(2, false, false, new double[] {0.5, 1.5}, frames);
    Plane[] planes = new Plane[4];
    for (int quarter = 0; quarter < 4; quarter++) {
      double sum = 0;
      for (double at : frames[quarter]) {
        sum += slopePerPeriod * (cycle + at / 2);
      }
      float mean = (float) (sum / frames[quarter].length);
      planes[quarter] = new Plane(1, 1, new float[] {mean});
    }
    return new QuarterMeans(
            cycle, planes[0], planes[1], planes[2], planes[3], new int[] {2, 2, 3, 2})
        .at(times);
  }

  @Test
  void aSteadyDriftIsTakenOutWhereverTheFramesOfTheQuartersLie() {
    DriftFreeCycles cycles = new DriftFreeCycles();
    cycles.next(drifting(0, 0.4));
    for (int cycle = 1; cycle < 5; cycle++) {
      ReducedCycle reduced = cycles.next(drifting(cycle, 0.4)).orElseThrow();
      assertEquals(0, reduced.quadrature()[0], 1e-6);
    }
    ReducedCycle last = cycles.provisional().orElseThrow();
    assertEquals(0, last.inPhase()[0], 1e-6);
    assertEquals(0, last.quadrature()[0], 1e-6);
  }
}
