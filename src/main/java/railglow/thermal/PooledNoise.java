package railglow.thermal;

import java.util.Arrays;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.apache.commons.statistics.distribution.FDistribution;

/**
 * The covariance of (I, C) between cycles that is typical of the picture at one filter width, and
 * how far single pixels may be trusted to share it. Immutable.
 *
 * @param varianceI per cycle
 * @param varianceC per cycle
 * @param covariance per cycle
 * @param priorDegrees prior degrees of freedom of a pixel's variance; infinite when all are alike
 * @param pooledDegrees degrees of freedom of the typical covariance itself
 * @param scatterToMeanI by how much the mean of the in-phase channel varies more than its scatter
 *     between cycles says, see CycleCorrelation; already in its variance
 * @param wildShare share of pixels that may have any noise of their own
 * @param priorOfAll prior degrees of freedom if the wild pixels were not seen apart from the others
 * @param isLocal whether there are places enough to tell where the wild pixels are
 */
record PooledNoise(
    double varianceI,
    double varianceC,
    double covariance,
    double priorDegrees,
    double pooledDegrees,
    double scatterToMeanI,
    double wildShare,
    double priorOfAll,
    boolean isLocal) {
  private static final double KEPT = 0.9;

  /** At least so many pixels are reckoned with to be unlike the rest, seen or not. */
  static final double LEAST_WILD = 1e-4;

  /** With fewer independent places the scatter of a width is no safer than that of the narrower. */
  private static final double FEW_PLACES = 100;

  /**
   * From the moments at one width.
   *
   * @param scale 0 at pixels without data
   * @param narrower the noise at the next narrower width, or null
   * @param scatterToMeanI of CycleCorrelation
   * @return null when nothing varies at all
   */
  static PooledNoise of(
      ChannelMoments moments,
      float[] scale,
      int width,
      double sigma,
      SpreadTable spread,
      PooledNoise narrower,
      double scatterToMeanI) {
    int degrees = moments.cycles() - 1;
    int stride = stride(sigma);
    int[] sample = lattice(moments, scale, width, stride);
    if (sample.length < 8 || degrees < 1) {
      return null;
    }
    double vI = medianOf(moments.squaresI(), sample);
    double vC = medianOf(moments.squaresC(), sample);
    if (!(vI > 0) || !(vC > 0)) {
      return null;
    }
    double[] s = trimmedMean(moments, sample, vI, vC, degrees);
    float[] whitened = whitenedTraces(moments, sample, s, degrees);
    RadixSort.sort(whitened);
    double correction = trimmed(whitened) / trimmedExpectation(2.0 * degrees);
    // a variance is an average of squares, whose correlation is the square of the field's
    double independent =
        Math.min(
            sample.length,
            (double) sample.length * stride * stride / (2 * Math.PI * sigma * sigma) + 1);
    double wild = wildShare(whitened, correction, 2.0 * degrees);
    double priorOfAll = spread.priorDegrees(whitened, independent);
    double prior = priorOfAll;
    boolean isLocal = independent >= FEW_PLACES;
    if (!isLocal && narrower != null) {
      priorOfAll = Math.min(priorOfAll, narrower.priorOfAll);
      prior = priorOfAll;
      wild = Math.max(wild, narrower.wildShare);
    } else if (isLocal && wild > LEAST_WILD) {
      // what a few do says nothing about how alike the others are
      whitened = tame(whitened, 2.0 * degrees, independent / sample.length);
      correction = trimmed(whitened) / trimmedExpectation(2.0 * degrees);
      independent *= whitened.length / (double) sample.length;
      prior = spread.priorDegrees(whitened, independent);
    }
    double scaleBack =
        Double.isInfinite(prior) ? correction : typicalScale(whitened, degrees, prior);
    return new PooledNoise(
        s[0] * scaleBack * scatterToMeanI,
        s[1] * scaleBack * meanToScatter(moments.cycles()),
        s[2] * scaleBack * Math.sqrt(scatterToMeanI),
        prior,
        KEPT * independent * degrees,
        scatterToMeanI,
        wild,
        priorOfAll,
        isLocal && wild > LEAST_WILD);
  }

  /**
   * How much less the mean quadrature of K cycles varies than its scatter between cycles says: the
   * slope corrections, of which half a cycle mean's noise remains in every cycle, telescope in the
   * mean. For white noise; redder noise leaves more scatter, so this errs on the safe side.
   */
  static double meanToScatter(int cycles) {
    if (cycles < 4) {
      return 1;
    }
    double k = cycles;
    double ofMean = quadratureOfMean(cycles);
    double scatter = ((k - 2) * (1 + 1.0 / 32) + 2 * 1.125 - ofMean) / (k - 1);
    return ofMean / scatter;
  }

  /** Variance of the mean of so many cycles' quadratures, times the cycles, over a cycle's own. */
  static double quadratureOfMean(int cycles) {
    return (cycles + 0.3125) / cycles;
  }

  /** Degrees of freedom that the typical covariance of so many pixels has, about. */
  static double pooledDegrees(int pixels, double sigma, int degrees) {
    return KEPT * (pixels / (2 * Math.PI * sigma * sigma) + 1) * degrees;
  }

  /** With scattered pixels the typical variance is read off the median. */
  private static double typicalScale(float[] sorted, int degrees, double prior) {
    return sorted[sorted.length / 2]
        / FDistribution.of(2.0 * degrees, prior).inverseCumulativeProbability(0.5);
  }

  /** A sample as large as the part of a sorted one that is not wild, and distributed like it. */
  private static float[] tame(float[] sorted, double degrees, double perSample) {
    double scale =
        sorted[sorted.length / 2]
            * degrees
            / ChiSquaredDistribution.of(degrees).inverseCumulativeProbability(0.5);
    float[] scaled = new float[sorted.length];
    for (int k = 0; k < sorted.length; k++) {
      scaled[k] = (float) (sorted[k] / scale);
    }
    double[] upTo = WildMap.tameness(scaled, degrees, perSample);
    for (int k = 1; k < sorted.length; k++) {
      upTo[k] += upTo[k - 1];
    }
    double sum = upTo[sorted.length - 1];
    float[] tame = new float[Math.max(8, (int) sum)];
    for (int j = 0, k = 0; j < tame.length; j++) {
      while (k < sorted.length - 1 && upTo[k] < (j + 0.5) / tame.length * sum) {
        k++;
      }
      tame[j] = sorted[k];
    }
    return tame;
  }

  /** Three times the share of pixels beyond the 99.9 % point that chance does not explain. */
  private static double wildShare(float[] sorted, double scale, double degrees) {
    double limit =
        scale * ChiSquaredDistribution.of(degrees).inverseSurvivalProbability(1e-3) / degrees;
    int beyond = 0;
    while (beyond < sorted.length && sorted[sorted.length - 1 - beyond] > limit) {
      beyond++;
    }
    double excess = beyond / (double) sorted.length - 1e-3;
    double chance = 2 * Math.sqrt(1e-3 / sorted.length);
    return Math.max(LEAST_WILD, excess > chance ? 3 * excess : 0);
  }

  static int[] lattice(ChannelMoments moments, float[] scale, int width, int stride) {
    int n = 0;
    int height = scale.length / width;
    int[] sample = new int[(width / stride + 1) * (height / stride + 1)];
    int start = stride / 2;
    for (int row = Math.min(start, height - 1); row < height; row += stride) {
      for (int x = Math.min(start, width - 1); x < width; x += stride) {
        int i = row * width + x;
        if (scale[i] > 0 && moments.squaresI()[i] > 0) {
          sample[n++] = i;
        }
      }
    }
    return Arrays.copyOf(sample, n);
  }

  static int stride(double sigma) {
    return Math.max(2, (int) Math.ceil(1.5 * sigma));
  }

  private static double medianOf(float[] values, int[] sample) {
    float[] some = new float[sample.length];
    for (int k = 0; k < sample.length; k++) {
      some[k] = values[sample[k]];
    }
    return Selection.median(some, some.length);
  }

  private static double[] trimmedMean(
      ChannelMoments m, int[] sample, double vI, double vC, int degrees) {
    float[] sizes = new float[sample.length];
    for (int k = 0; k < sample.length; k++) {
      int i = sample[k];
      sizes[k] = (float) (m.squaresI()[i] / vI + m.squaresC()[i] / vC);
    }
    int rank = Math.min(sizes.length - 1, (int) (KEPT * sizes.length));
    float limit = Selection.kth(sizes.clone(), sizes.length, rank);
    double[] sum = new double[3];
    int n = 0;
    for (int k = 0; k < sample.length; k++) {
      if (sizes[k] <= limit) {
        int i = sample[k];
        sum[0] += m.squaresI()[i];
        sum[1] += m.squaresC()[i];
        sum[2] += m.products()[i];
        n++;
      }
    }
    double per = (double) n * degrees;
    double bound = 0.98 * Math.sqrt(sum[0] * sum[1]) / per;
    double covariance = Math.max(-bound, Math.min(bound, sum[2] / per));
    return new double[] {sum[0] / per, sum[1] / per, covariance};
  }

  /** trace(S0^-1 S) / 2 per sampled pixel: 1 on average where S0 holds. */
  private static float[] whitenedTraces(ChannelMoments m, int[] sample, double[] s, int degrees) {
    double determinant = s[0] * s[1] - s[2] * s[2];
    double per = 1 / (2 * determinant * degrees);
    float[] traces = new float[sample.length];
    for (int k = 0; k < sample.length; k++) {
      int i = sample[k];
      traces[k] =
          (float)
              ((s[1] * m.squaresI()[i] + s[0] * m.squaresC()[i] - 2 * s[2] * m.products()[i])
                  * per);
    }
    return traces;
  }

  private static double trimmed(float[] sorted) {
    int n = Math.max(1, (int) (KEPT * sorted.length));
    double sum = 0;
    for (int k = 0; k < n; k++) {
      sum += sorted[k];
    }
    return sum / n;
  }

  /** Mean of the lower part of chi-squared / nu. */
  private static double trimmedExpectation(double nu) {
    double limit = ChiSquaredDistribution.of(nu).inverseCumulativeProbability(KEPT);
    return ChiSquaredDistribution.of(nu + 2).cumulativeProbability(limit) / KEPT;
  }
}
