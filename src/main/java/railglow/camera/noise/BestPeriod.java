package railglow.camera.noise;

/**
 * The pulse period that shows a heat source in the least time, from measured noise. One half of a
 * cycle is averaged over P/2, so the noise of ON minus OFF in one cycle is the root of 2 times the
 * Allan deviation at P/2; in a given time there are as many cycles as fit, so the noise that
 * remains goes with ADEV(P/2) sqrt(P). The signal is what a first-order lag of time constant tau
 * (body and camera together) leaves in phase: 1 - (4 tau/P) tanh(P/(4 tau)). Pure.
 */
public final class BestPeriod {
  private static final int STEPS = 200;

  private BestPeriod() {}

  /** The part of the final rise that ON minus OFF shows in a steady row of cycles. */
  public static double inPhasePart(double periodSeconds, double tauSeconds) {
    if (tauSeconds <= 0) {
      return 1;
    }
    double x = periodSeconds / (4 * tauSeconds);
    return 1 - Math.tanh(x) / x;
  }

  /**
   * The smallest rise (one standard error) that a pixel shows after a time.
   *
   * @return in the figures' unit; NaN where the Allan deviation was not measured
   */
  public static double riseError(
      NoiseFigures noise, double periodSeconds, double tauSeconds, double totalSeconds) {
    double perCycle = Math.sqrt(2) * noise.allanDeviationAt(periodSeconds / 2);
    return perCycle
        * Math.sqrt(periodSeconds / totalSeconds)
        / inPhasePart(periodSeconds, tauSeconds);
  }

  /**
   * The best period within a range.
   *
   * @return NaN when the noise was measured for too short a time to tell
   */
  public static double find(
      NoiseFigures noise, double tauSeconds, double lowSeconds, double highSeconds) {
    double best = Double.NaN;
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i <= STEPS; i++) {
      double period = lowSeconds * Math.pow(highSeconds / lowSeconds, (double) i / STEPS);
      double error = riseError(noise, period, tauSeconds, 1);
      if (error < least * (1 - 1e-6)) {
        least = error;
        best = period;
      }
    }
    return best;
  }
}
