package railglow.thermal;

import java.util.Optional;
import org.apache.commons.statistics.distribution.BinomialDistribution;

/**
 * Whether a signal that follows the pulse follows it as heat does. Mixtures of first-order bodies
 * lie between the directions of the fastest and the slowest of them, so only what lies clearly
 * outside of both is refused: by more than the model's own error in angle and by more than noise.
 * Stateless.
 */
final class HeatLikeness {
  /** A twentieth of a period: the times of frames and edges are not perfect. */
  private static final double EARLY_RADIANS = Math.toRadians(20);

  /** Heat that comes through a package and a board in a row is later than any single body's. */
  private static final double LATE_RADIANS = Math.toRadians(75);

  private static final double NOISE_SIGMAS = 3;

  /** The filter that keeps the signs is rarely the best for a source. */
  private static final double SIGN_SHARE = 0.7;

  private static final double SIGN_CHANCE = 1e-3;

  private HeatLikeness() {}

  /**
   * What speaks against heat in the amplitudes of both channels.
   *
   * @param noise of the channels' amplitudes up to a factor
   * @param perUnit that factor: variance of the amplitudes for a noise variance of 1
   */
  static Optional<NotHeat> objection(
      double inPhase,
      double quadrature,
      PooledNoise noise,
      double perUnit,
      DetectionSettings settings) {
    double[] taus = settings.bodyTimeConstantsSeconds();
    FirstOrderResponse early = response(taus[0], settings);
    FirstOrderResponse late = response(taus[taus.length - 1], settings);
    double angle = Math.atan2(quadrature, inPhase);
    double ahead = turned(early.angle() - angle);
    double behind = turned(angle - late.angle());
    double within = turned(late.angle() - early.angle());
    if (turned(angle - early.angle()) <= within) {
      return Optional.empty();
    }
    boolean isAhead = ahead < behind;
    if (ahead <= EARLY_RADIANS || behind <= LATE_RADIANS) {
      return Optional.empty();
    }
    FirstOrderResponse nearest = isAhead ? early : late;
    double outside = distance(inPhase, quadrature, nearest, noise) / Math.sqrt(perUnit);
    return outside <= NOISE_SIGMAS
        ? Optional.empty()
        : Optional.of(isAhead ? NotHeat.AHEAD_OF_THE_PULSE : NotHeat.LATER_THAN_A_BODY);
  }

  /**
   * Whether a score reached in so many cycles should show in more of them.
   *
   * @param share of the cycles with the source's own sign
   */
  static boolean missesCycles(double score, int cycles, double share) {
    double expected = 1 - NormalScore.upperTail(SIGN_SHARE * score / Math.sqrt(cycles));
    int with = (int) Math.round(share * cycles);
    return BinomialDistribution.of(cycles, expected).cumulativeProbability(with) < SIGN_CHANCE;
  }

  private static FirstOrderResponse response(double tau, DetectionSettings settings) {
    return settings.response(tau);
  }

  /** Into 0 to 2 pi. */
  private static double turned(double radians) {
    double full = 2 * Math.PI;
    return radians - full * Math.floor(radians / full);
  }

  /** How far the amplitudes are from a ray, in units of the whitened noise. */
  private static double distance(double i, double c, FirstOrderResponse ray, PooledNoise noise) {
    double l11 = Math.sqrt(noise.varianceI());
    double l21 = noise.covariance() / l11;
    double l22 = Math.sqrt(noise.varianceC() - l21 * l21);
    double u = i / l11;
    double v = (c - l21 * u) / l22;
    double rayU = ray.inPhase() / l11;
    double rayV = (ray.quadrature() - l21 * rayU) / l22;
    double along = (u * rayU + v * rayV) / Math.hypot(rayU, rayV);
    double square = u * u + v * v - Math.max(0, along) * Math.max(0, along);
    return Math.sqrt(Math.max(0, square));
  }
}
