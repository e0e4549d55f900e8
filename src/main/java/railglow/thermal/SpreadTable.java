package railglow.thermal;

import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.apache.commons.statistics.distribution.FDistribution;

/**
 * How widely sample variances of d degrees of freedom scatter over pixels when the pixels' true
 * variances are themselves scattered: variance / typical variance follows F(d, prior), with the
 * prior degrees of freedom infinite when all pixels are alike (Smyth, Stat. Appl. Genet. Mol. Biol.
 * 3, 2004, article 3). Immutable.
 */
final class SpreadTable {
  /** Upper quantiles at which the scatter is looked at. */
  static final double[] LEVELS = {0.75, 0.9, 0.97, 0.99};

  private static final Remembered<Double, SpreadTable> MADE = new Remembered<>(8, SpreadTable::new);

  private static final double[] PRIORS = {
    1, 1.5, 2, 3, 4, 6, 8, 12, 16, 24, 32, 48, 64, 96, 128, 192, 256, Double.POSITIVE_INFINITY
  };
  private final double degrees;
  private final double[][] logRatios = new double[PRIORS.length][LEVELS.length];

  /** The last few are remembered. */
  static SpreadTable of(double degreesOfFreedom) {
    return MADE.of(degreesOfFreedom);
  }

  private SpreadTable(double degreesOfFreedom) {
    degrees = degreesOfFreedom;
    for (int p = 0; p < PRIORS.length; p++) {
      double median = quantile(PRIORS[p], 0.5);
      for (int l = 0; l < LEVELS.length; l++) {
        logRatios[p][l] = Math.log(quantile(PRIORS[p], LEVELS[l]) / median);
      }
    }
  }

  private double quantile(double prior, double level) {
    return Double.isInfinite(prior)
        ? ChiSquaredDistribution.of(degrees).inverseCumulativeProbability(level) / degrees
        : FDistribution.of(degrees, prior).inverseCumulativeProbability(level);
  }

  /**
   * The prior degrees of freedom that explain the upper quantiles of a sorted sample of variances;
   * the least over the levels. Scatter that twice its own sampling error explains counts as none.
   *
   * @param independent how many independent values the sample is worth
   */
  double priorDegrees(float[] sorted, double independent) {
    double median = Math.max(Float.MIN_NORMAL, sorted[sorted.length / 2]);
    double least = Double.POSITIVE_INFINITY;
    for (int l = 0; l < LEVELS.length; l++) {
      double level = LEVELS[l];
      double observed = at(sorted, level);
      if (observed > 0 && independent * (1 - level) >= 2) {
        double error = logQuantileError(sorted, level, independent);
        least = Math.min(least, priorAt(l, Math.log(observed / median) - 2 * error));
      }
    }
    return least;
  }

  private static double at(float[] sorted, double level) {
    return sorted[Math.min(sorted.length - 1, (int) (level * sorted.length))];
  }

  /** Standard error of log(upper quantile / median) by the width of a binomial band. */
  private static double logQuantileError(float[] sorted, double level, double independent) {
    return Math.hypot(halfBand(sorted, level, independent), halfBand(sorted, 0.5, independent));
  }

  private static double halfBand(float[] sorted, double level, double independent) {
    double d = Math.sqrt(level * (1 - level) / independent);
    double high = at(sorted, Math.min(1, level + d));
    double low = Math.max(Float.MIN_NORMAL, at(sorted, Math.max(0, level - d)));
    return Math.log(high / low) / 2;
  }

  private double priorAt(int level, double logRatio) {
    if (logRatio <= logRatios[PRIORS.length - 1][level]) {
      return Double.POSITIVE_INFINITY;
    }
    for (int p = PRIORS.length - 2; p >= 0; p--) {
      if (logRatio <= logRatios[p][level]) {
        double low = logRatios[p + 1][level];
        double share = (logRatio - low) / (logRatios[p][level] - low);
        // interpolated in 1 / prior
        return 1 / ((1 - share) / PRIORS[p + 1] + share / PRIORS[p]);
      }
    }
    return PRIORS[0];
  }
}
