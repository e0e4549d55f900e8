package railglow.thermal;

import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.apache.commons.statistics.distribution.FDistribution;

/**
 * What a score is worth when a few pixels may have noise of their own, of any size above the
 * typical: a reflection, an edge that moves, a flickering pixel. The upper tail is the mixture of
 * that of the moderated t and, weighted by how likely the pixel is such a one given its scatter
 * between cycles, that of its own t. Immutable.
 */
final class WildPixels {
  private static final int STEPS = 160;
  private static final double LOWEST_LOG = Math.log(1e-4);
  private static final double HIGHEST_LOG = Math.log(1e6);

  /** Logarithm of the range over which wild variances are spread evenly: 1 to 10 000. */
  private static final double WILD_RANGE = Math.log(1e4);

  private final double[] logWeights = new double[STEPS + 1];
  private final NormalScore.Table own;

  WildPixels(PooledNoise noise, int degrees) {
    own = new NormalScore.Table(degrees);
    ChiSquaredDistribution chi = ChiSquaredDistribution.of(degrees);
    FDistribution f =
        Double.isInfinite(noise.priorDegrees())
            ? null
            : FDistribution.of(degrees, noise.priorDegrees());
    for (int k = 0; k <= STEPS; k++) {
      double variance = Math.exp(LOWEST_LOG + (HIGHEST_LOG - LOWEST_LOG) * k / STEPS);
      double logTame =
          f == null
              ? chi.logDensity(variance * degrees) + Math.log(degrees)
              : f.logDensity(variance);
      double wild = chi.cumulativeProbability(variance * degrees) / (WILD_RANGE * variance);
      double logOdds = Math.log(noise.wildShare() * Math.max(wild, 1e-300)) - logTame;
      logWeights[k] = logOdds > 0 ? -Math.log1p(Math.exp(-logOdds)) : logOdds - log1pExp(logOdds);
    }
  }

  private static double log1pExp(double x) {
    return Math.log1p(Math.exp(x));
  }

  /**
   * The score of the mixture.
   *
   * @param score of the moderated t, above 0
   * @param ownT the pixel's own t
   * @param variance the pixel's variance over the typical one
   */
  double score(double score, double ownT, double variance) {
    double at = (Math.log(Math.max(variance, 1e-300)) - LOWEST_LOG) / (HIGHEST_LOG - LOWEST_LOG);
    double step = Math.max(0, Math.min(STEPS - 1e-9, at * STEPS));
    int k = (int) step;
    double logWeight = logWeights[k] + (step - k) * (logWeights[k + 1] - logWeights[k]);
    double ownScore = own.of(ownT);
    if (ownScore >= score) {
      return score;
    }
    double tail =
        NormalScore.upperTail(Math.min(37, score))
            + Math.exp(logWeight) * NormalScore.upperTail(Math.min(37, ownScore));
    return score > 37 && ownScore > 37 ? ownScore : NormalScore.ofUpperTail(Math.min(tail, 1));
  }
}
