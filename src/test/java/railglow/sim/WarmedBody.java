package railglow.sim;

/**
 * A body of first order seen through a camera of first order, warmed by pulses from the first cycle
 * on or since long ago; followed in small steps of time, without any closed form. Not thread-safe;
 * ask in the order of time.
 */
final class WarmedBody {
  private static final double STEP_SECONDS = 2e-4;
  private static final int PERIODS_BEFORE = 12;
  private final double bodySeconds;
  private final double cameraSeconds;
  private final double periodSeconds;
  private final double lateSeconds;
  private double seconds;
  private double body;
  private double seen;

  private WarmedBody(
      double bodySeconds,
      double cameraSeconds,
      double periodSeconds,
      double lateSeconds,
      int firstPulse) {
    this.bodySeconds = bodySeconds;
    this.cameraSeconds = cameraSeconds;
    this.periodSeconds = periodSeconds;
    this.lateSeconds = lateSeconds;
    this.seconds = firstPulse * periodSeconds;
  }

  /**
   * At rest before the pulse of cycle 0.
   *
   * @param lateSeconds by which every edge is later than a quarter and three quarters of a period
   */
  static WarmedBody fromRest(
      double bodySeconds, double cameraSeconds, double periodSeconds, double lateSeconds) {
    return new WarmedBody(bodySeconds, cameraSeconds, periodSeconds, lateSeconds, 0);
  }

  /** Warmed by many pulses before that of cycle 0. */
  static WarmedBody sinceLong(
      double bodySeconds, double cameraSeconds, double periodSeconds, double lateSeconds) {
    WarmedBody warmed =
        new WarmedBody(bodySeconds, cameraSeconds, periodSeconds, lateSeconds, -PERIODS_BEFORE);
    warmed.body = 0.5;
    warmed.seen = 0.5;
    return warmed;
  }

  /** What the camera sees of a settled rise of 1 at this time after the start of a cycle. */
  double seenAt(double untilSeconds) {
    while (seconds < untilSeconds) {
      double step = Math.min(STEP_SECONDS, untilSeconds - seconds);
      double phase = (seconds + step / 2 - lateSeconds) / periodSeconds;
      double inCycle = phase - Math.floor(phase);
      double drive = inCycle >= 0.25 && inCycle < 0.75 ? 1 : 0;
      double before = body;
      body = follow(body, drive, step, bodySeconds);
      seen = follow(seen, (before + body) / 2, step, cameraSeconds);
      seconds += step;
    }
    return seen;
  }

  private static double follow(double value, double towards, double step, double tau) {
    return tau > 0 ? towards + (value - towards) * Math.exp(-step / tau) : towards;
  }

  /** The size of both channels over whole quarters between edges in time, for a rise of 1. */
  static double swing(double bodySeconds, double cameraSeconds, double periodSeconds) {
    WarmedBody warmed = sinceLong(bodySeconds, cameraSeconds, periodSeconds, 0);
    int steps = 1000;
    double[] mean = new double[4];
    for (int quarter = 0; quarter < 4; quarter++) {
      for (int k = 0; k < steps; k++) {
        double at = (quarter + (k + 0.5) / steps) * periodSeconds / 4;
        mean[quarter] += warmed.seenAt(at) / steps;
      }
    }
    return Math.hypot(
        (mean[1] + mean[2] - mean[0] - mean[3]) / 2, (mean[2] + mean[3] - mean[0] - mean[1]) / 2);
  }
}
