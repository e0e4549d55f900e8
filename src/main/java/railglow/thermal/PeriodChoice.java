package railglow.thermal;

import java.util.function.DoubleUnaryOperator;

/**
 * What a pulse period is worth for a body of a time constant in measured noise. One half of a cycle
 * is averaged over P/2, so a channel's noise in one cycle is the root of 2 times the Allan
 * deviation at P/2, and what is left of it after a time goes with ADEV(P/2) sqrt(P). The signal is
 * the length of the body's (I, C): both channels are searched. White noise and drift are in the
 * Allan deviation. Pure.
 */
public final class PeriodChoice {
  /** A shorter period is taken when it loses no more than this share. */
  private static final double WORTH = 0.9;

  private static final int STEPS = 120;

  private PeriodChoice() {}

  /** Signal over noise per root of a second for a rise of 1 K, up to one factor. */
  public static double worth(
      DoubleUnaryOperator allanDeviation, double period, double bodySeconds, double cameraSeconds) {
    FirstOrderResponse seen = FirstOrderResponse.of(bodySeconds, cameraSeconds, period);
    return seen.size() / (allanDeviation.applyAsDouble(period / 2) * Math.sqrt(period));
  }

  /**
   * The shortest period of a range whose worth is within a tenth of the best: short periods give
   * more cycles, and so an earlier answer where the source is strong.
   *
   * @return NaN when the Allan deviation is not known in the range
   */
  public static double best(
      DoubleUnaryOperator allanDeviation,
      double bodySeconds,
      double cameraSeconds,
      double shortest,
      double longest) {
    double most = 0;
    for (int i = 0; i <= STEPS; i++) {
      double worth =
          worth(allanDeviation, period(i, shortest, longest), bodySeconds, cameraSeconds);
      most = worth > most ? worth : most;
    }
    for (int i = 0; i <= STEPS; i++) {
      double period = period(i, shortest, longest);
      if (worth(allanDeviation, period, bodySeconds, cameraSeconds) >= WORTH * most && most > 0) {
        return period;
      }
    }
    return Double.NaN;
  }

  private static double period(int step, double shortest, double longest) {
    return shortest * Math.pow(longest / shortest, (double) step / STEPS);
  }
}
