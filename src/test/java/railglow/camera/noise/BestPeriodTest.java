package railglow.camera.noise;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class BestPeriodTest {
  /** The closed form against a first-order body stepped through many cycles. */
  @Test
  void theInPhasePartIsThatOfAFirstOrderBody() {
    for (double ratio : new double[] {1, 2, 4, 8, 20}) {
      double tau = 1 / ratio;
      int steps = 200_000;
      double decay = Math.exp(-1.0 / steps / tau);
      double body = 0;
      double sum = 0;
      int cycles = (int) Math.ceil(20 / ratio) + 2;
      for (int cycle = 0; cycle < cycles; cycle++) {
        sum = 0;
        for (int i = 0; i < steps; i++) {
          double heat = i < steps / 2 ? 1 : 0;
          double before = body;
          body = heat + (body - heat) * decay;
          sum += (i < steps / 2 ? 1 : -1) * (before + body) / 2;
        }
      }
      assertEquals(sum / (steps / 2.0), BestPeriod.inPhasePart(1, tau), 1e-5, "P/tau " + ratio);
    }
    assertEquals(1, BestPeriod.inPhasePart(2, 0));
  }

  @Test
  void whiteNoiseAndAFastBodyLeaveThePeriodOpenSoTheShortestWins() {
    NoiseFigures white = figures(averaging -> 0.05 / Math.sqrt(25 * averaging));
    assertEquals(0.4, BestPeriod.find(white, 0, 0.4, 10), 0.01);
  }

  @Test
  void aSlowBodyAsksForALongPeriodAndDriftForAShorterOne() {
    NoiseFigures white = figures(averaging -> 0.05 / Math.sqrt(25 * averaging));
    NoiseFigures drifting =
        figures(averaging -> Math.hypot(0.05 / Math.sqrt(25 * averaging), 0.01 * averaging));
    double calm = BestPeriod.find(white, 1, 0.4, 12);
    double hurried = BestPeriod.find(drifting, 1, 0.4, 12);
    assertTrue(calm > 8, "white noise: " + calm);
    assertTrue(hurried > 1 && hurried < calm, "with drift: " + hurried);
  }

  /** 50 mK at 25 Hz: ON minus OFF of one pixel over time T has 2 x 50 mK / sqrt(25 T). */
  @Test
  void theErrorOfWhiteNoiseIsTheTextbooks() {
    NoiseFigures white = figures(averaging -> 0.05 / Math.sqrt(25 * averaging));
    assertEquals(2 * 0.05 / Math.sqrt(25 * 60), BestPeriod.riseError(white, 2, 0, 60), 1e-6);
  }

  @Test
  void whatWasNotMeasuredIsNotClaimed() {
    NoiseFigures brief = figures(averaging -> 0.01);
    assertTrue(Double.isNaN(BestPeriod.riseError(brief, 100, 0, 60)));
    assertTrue(Double.isNaN(BestPeriod.find(brief, 0, 100, 200)));
  }

  private static NoiseFigures figures(java.util.function.DoubleUnaryOperator deviation) {
    double[] averaging = new double[10];
    double[] deviations = new double[10];
    for (int i = 0; i < 10; i++) {
      averaging[i] = 0.04 * (1 << i);
      deviations[i] = deviation.applyAsDouble(averaging[i]);
    }
    return new NoiseFigures(2000, 80, 0.05, 0.05, 0, 0, 0, 0, 0, 0, averaging, deviations);
  }
}
