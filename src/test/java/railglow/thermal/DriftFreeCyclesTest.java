package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
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

  /** What all cycles but the first show. */
  private static FirstOrderResponse withoutTheStart(List<QuarterMeans> cycles) {
    DriftFreeCycles drift = new DriftFreeCycles();
    List<ReducedCycle> done = new ArrayList<>();
    cycles.forEach(means -> drift.next(means).ifPresent(done::add));
    done.add(drift.provisional().orElseThrow());
    ReducedCycle bend = drift.startBend().orElseThrow();
    double inPhase = bend.inPhase()[0];
    double quadrature = bend.quadrature()[0];
    for (ReducedCycle cycle : done.subList(1, done.size())) {
      inPhase += cycle.inPhase()[0];
      quadrature += cycle.quadrature()[0];
    }
    int of = done.size() - 1;
    return new FirstOrderResponse(inPhase / of, quadrature / of);
  }

  /** Its first cycle shows up to a fifth more. */
  @ParameterizedTest
  @CsvSource({"0.1, 0.0001", "0.3, 0.0015", "1, 0.017", "3, 0.015", "10, 0.004"})
  void withoutItsFirstCycleABodyThatStartsColdShowsNearlyWhatItWillShowWhenWarm(
      double tauPeriods, double within) {
    FirstOrderResponse seen = withoutTheStart(fromCold(tauPeriods));
    FirstOrderResponse warm = FirstOrderResponse.of(tauPeriods, 1);
    assertEquals(1, seen.size() / warm.size(), within);
  }

  /** The rest is known of every body. */
  @ParameterizedTest
  @ValueSource(doubles = {0.1, 0.3, 1, 3})
  void theCurveOfTheFramesUsedHasTheStartInIt(double tauPeriods) {
    FramesUsed used = new FramesUsed(DetectionSettings.usual(1, 0, 0.05, 4, 30));
    double[][] frames = new double[4][500];
    for (int quarter = 0; quarter < 4; quarter++) {
      for (int k = 0; k < 500; k++) {
        frames[quarter][k] = (quarter + (k + 0.5) / 500) / 4;
      }
    }
    CycleTimes times = new CycleTimes(1, false, false, new double[] {0.25, 0.75}, frames);
    for (int cycle = 0; cycle < CYCLES; cycle++) {
      used.add(cycle, List.of(times));
    }
    FirstOrderResponse shown = withoutTheStart(fromCold(tauPeriods));
    FirstOrderResponse seen = used.ofSwings().seen(tauPeriods);
    assertEquals(shown.inPhase(), seen.inPhase(), 2e-4);
    assertEquals(shown.quadrature(), seen.quadrature(), 2e-4);
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
