package railglow.thermal;

import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.apache.commons.statistics.distribution.FDistribution;

/**
 * Where in the picture noise is not the typical one: per place the share of pixels around it that
 * have noise of their own. A reflection in one corner then says nothing about the other. The share
 * is the mean of its distribution given the scatter of the pixels around, when before it may have
 * any size from {@value #LEAST_SHARE} to 1, evenly in its logarithm. Mutable, not thread-safe.
 */
final class WildMap {
  static final double LEAST_SHARE = 1e-4;

  /** Logarithm of the range over which wild variances are spread evenly: 1 to 10 000. */
  static final double WILD_RANGE = Math.log(1e4);

  /** Lattice points along the side of a block. */
  private static final int BLOCK = 4;

  /** Blocks to each side that count as around. */
  private static final int AROUND = 2;

  private static final int BINS = 48;
  private static final double LOWEST_LOG = Math.log(1e-2);
  private static final double HIGHEST_LOG = Math.log(1e4);
  private static final int SHARES = 24;

  private final int width;
  private final int blockSize;
  private final int blockColumns;
  private final int blockRows;
  private final int[] counts;
  private final double[] logLikelihoods;
  private final double perSample;
  private final double[] shares;

  /**
   * @param counts per block and bin of the logarithm of variance over typical variance
   * @param degrees of freedom of a variance
   * @param prior degrees of freedom of the tame pixels' variances
   * @param perSample how many independent values a sample is worth
   */
  private WildMap(
      int width,
      int blockSize,
      int blockRows,
      int[] counts,
      double degrees,
      double prior,
      double perSample) {
    this.width = width;
    this.blockSize = blockSize;
    this.blockColumns = (width + blockSize - 1) / blockSize;
    this.blockRows = blockRows;
    this.counts = counts;
    this.perSample = perSample;
    logLikelihoods = logLikelihoods(degrees, prior);
    shares = new double[blockColumns * blockRows];
  }

  /**
   * From the moments at one width.
   *
   * @param withoutFirst whether the first cycle is not to count
   */
  static WildMap of(
      ChannelMoments moments,
      float[] scale,
      int width,
      double sigma,
      PooledNoise noise,
      boolean withoutFirst) {
    int stride = PooledNoise.stride(sigma);
    int[] lattice = PooledNoise.lattice(moments, scale, width, stride);
    int blockSize = BLOCK * stride;
    int blockColumns = (width + blockSize - 1) / blockSize;
    int blockRows = (scale.length / width + blockSize - 1) / blockSize;
    int[] counts = new int[blockColumns * blockRows * BINS];
    int degrees = moments.cycles() - (withoutFirst ? 2 : 1);
    for (int i : lattice) {
      int block = i / width / blockSize * blockColumns + i % width / blockSize;
      counts[block * BINS + bin(moments.at(i).whitened(noise, withoutFirst) / (2 * degrees))]++;
    }
    double perSample = Math.min(1, stride * stride / (2 * Math.PI * sigma * sigma));
    return new WildMap(
        width, blockSize, blockRows, counts, 2.0 * degrees, noise.priorDegrees(), perSample);
  }

  /**
   * How likely each of a sample of variances, 1 where typical and all tame ones alike, is that of a
   * tame pixel.
   */
  static double[] tameness(float[] variances, double degrees, double perSample) {
    double[] logs = logLikelihoods(degrees, Double.POSITIVE_INFINITY);
    int[] counts = new int[BINS];
    for (float v : variances) {
      counts[bin(v)]++;
    }
    double share = posteriorMean(logs, counts, perSample);
    double[] tame = new double[BINS];
    for (int b = 0; b < BINS; b++) {
      double odds = share / (1 - share) * Math.exp(logOddsOf(b, degrees, Double.POSITIVE_INFINITY));
      tame[b] = 1 / (1 + odds);
    }
    double[] result = new double[variances.length];
    for (int k = 0; k < result.length; k++) {
      result[k] = tame[bin(variances[k])];
    }
    return result;
  }

  /** The share around a pixel. */
  double shareAt(int pixel) {
    int row = pixel / width / blockSize;
    int column = pixel % width / blockSize;
    int block = row * blockColumns + column;
    if (shares[block] == 0) {
      int[] around = new int[BINS];
      for (int r = Math.max(0, row - AROUND); r <= Math.min(blockRows - 1, row + AROUND); r++) {
        int last = Math.min(blockColumns - 1, column + AROUND);
        for (int c = Math.max(0, column - AROUND); c <= last; c++) {
          for (int b = 0; b < BINS; b++) {
            around[b] += counts[(r * blockColumns + c) * BINS + b];
          }
        }
      }
      shares[block] = posteriorMean(logLikelihoods, around, perSample);
    }
    return shares[block];
  }

  private static int bin(double variance) {
    double at = (Math.log(Math.max(variance, 1e-300)) - LOWEST_LOG) / (HIGHEST_LOG - LOWEST_LOG);
    return (int) Math.max(0, Math.min(BINS - 1, BINS * at));
  }

  private static double shareOf(int k) {
    return Math.pow(LEAST_SHARE, 1 - (k + 0.5) / SHARES);
  }

  /** log(1 - share + share wild / tame) per share and bin. */
  private static double[] logLikelihoods(double degrees, double prior) {
    double[] logs = new double[SHARES * BINS];
    for (int b = 0; b < BINS; b++) {
      double odds = Math.exp(logOddsOf(b, degrees, prior));
      for (int k = 0; k < SHARES; k++) {
        logs[k * BINS + b] = Math.log1p(shareOf(k) * (odds - 1));
      }
    }
    return logs;
  }

  private static double logOddsOf(int bin, double degrees, double prior) {
    double variance = Math.exp(LOWEST_LOG + (HIGHEST_LOG - LOWEST_LOG) * (bin + 0.5) / BINS);
    return Math.min(300, logOdds(variance, degrees, prior));
  }

  /** log of the density of a variance among wild pixels over that among tame ones. */
  static double logOdds(double variance, double degrees, double prior) {
    ChiSquaredDistribution chi = ChiSquaredDistribution.of(degrees);
    double logTame =
        Double.isInfinite(prior)
            ? chi.logDensity(variance * degrees) + Math.log(degrees)
            : FDistribution.of(degrees, prior).logDensity(variance);
    double wild = chi.cumulativeProbability(variance * degrees) / (WILD_RANGE * variance);
    return Math.log(Math.max(wild, 1e-300)) - logTame;
  }

  private static double posteriorMean(double[] logLikelihoods, int[] counts, double perSample) {
    double[] logs = new double[SHARES];
    double most = Double.NEGATIVE_INFINITY;
    for (int k = 0; k < SHARES; k++) {
      for (int b = 0; b < BINS; b++) {
        logs[k] += counts[b] * logLikelihoods[k * BINS + b];
      }
      logs[k] *= perSample;
      most = Math.max(most, logs[k]);
    }
    double sum = 0;
    double weighted = 0;
    for (int k = 0; k < SHARES; k++) {
      double weight = Math.exp(logs[k] - most);
      sum += weight;
      weighted += weight * shareOf(k);
    }
    return weighted / sum;
  }
}
