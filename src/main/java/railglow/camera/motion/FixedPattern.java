package railglow.camera.motion;

import java.util.Arrays;

/**
 * How strong a camera's fixed pattern is in a reference image, and what it does to a shift
 * estimate. The pattern is taken as white over pixels; its variance is that of the image after the
 * mask (1 -2 1) x (1 -2 1), which optics leave next to nothing of (J. Immerkaer, Fast Noise
 * Variance Estimation, CVIU 64, 1996), with the median in place of the mean against edges. Not
 * thread-safe.
 */
final class FixedPattern {
  private static final double MEDIAN_ABSOLUTE_TO_SIGMA = 1.4826;

  /** The root of the sum of the mask's squares. */
  private static final double MASK_GAIN = 6;

  private static final int ENOUGH = 4000;

  /** Of a curvature, what must at least be left to divide by. */
  private static final double LEAST_SHARE = 0.2;

  private final int width;
  private final int height;
  private final int pixels;
  private final double smoothingSigma;
  private final double smoothingFactor;
  private final float[] sorted;
  private double smoothedVariance;

  /**
   * @param margin of the image that takes no part in the estimate
   * @param smoothingSigma of the Gaussian that images go through before they are compared, pixels
   * @param smoothingFactor by which it shrinks the variance of white noise
   */
  FixedPattern(int width, int height, int margin, double smoothingSigma, double smoothingFactor) {
    this.width = width;
    this.height = height;
    this.pixels = (width - 2 * margin) * (height - 2 * margin);
    this.smoothingSigma = smoothingSigma;
    this.smoothingFactor = smoothingFactor;
    this.sorted = new float[ENOUGH + 1];
  }

  /** Measures the pattern in a reference that was not smoothed yet. */
  void measure(float[] reference) {
    int stride = Math.max(1, (width - 2) * (height - 2) / ENOUGH) | 1;
    int used = 0;
    for (int k = 0; k < (width - 2) * (height - 2) && used < sorted.length; k += stride) {
      int at = (1 + k / (width - 2)) * width + 1 + k % (width - 2);
      float across = reference[at - 1] - 2 * reference[at] + reference[at + 1];
      float above =
          reference[at - width - 1] - 2 * reference[at - width] + reference[at - width + 1];
      float below =
          reference[at + width - 1] - 2 * reference[at + width] + reference[at + width + 1];
      sorted[used++] = Math.abs(above - 2 * across + below);
    }
    Arrays.sort(sorted, 0, used);
    double sigma = MEDIAN_ABSOLUTE_TO_SIGMA * sorted[used / 2] / MASK_GAIN;
    smoothedVariance = sigma * sigma * smoothingFactor;
  }

  /** Of the pattern after smoothing, in the reference's unit. */
  double strength() {
    return Math.sqrt(smoothedVariance);
  }

  /** The mean of sum(g p(x + d)), g the pattern's own central difference along the first axis. */
  double pull(double along, double across) {
    return pixels
        * smoothedVariance
        * (correlation(along - 1, across) - correlation(along + 1, across))
        / 2;
  }

  /** A sum of squared gradients less what the pattern adds to it. */
  double withoutOwnPart(double sumOfSquares) {
    double own = pixels * smoothedVariance * (1 - correlation(2, 0)) / 2;
    return Math.max(LEAST_SHARE * sumOfSquares, sumOfSquares - own);
  }

  /** Of smoothed white noise with itself at a distance: a Gaussian of twice the variance. */
  private double correlation(double x, double y) {
    return Math.exp(-(x * x + y * y) / (4 * smoothingSigma * smoothingSigma));
  }
}
