package railglow.thermal;

import java.util.Arrays;

/**
 * A Gaussian matched filter of one width with zero weight outside the picture and at masked pixels,
 * in the value and in its variance: the output is sum(h m x) / sqrt(sum(h^2 m)), so that white
 * noise of any level keeps its standard deviation everywhere, at the border too. Not thread-safe
 * (it owns work space).
 */
final class MatchedFilter {
  private final int width;
  private final int height;
  private final double sigma;
  private final float[] kernel;
  private final SymmetricKernel sums;
  private final float[] scale;
  private final float[] scaleRow;
  private final float[] acrossRow;
  private final double[] sharesAcross;
  private final double[] sharesDown;
  private float leastScale;

  MatchedFilter(int width, int height, double sigmaPixels) {
    this.width = width;
    this.height = height;
    this.sigma = sigmaPixels;
    int radius = Math.max(1, (int) Math.ceil(3 * sigmaPixels));
    kernel = new float[radius + 1];
    for (int i = 0; i <= radius; i++) {
      kernel[i] = (float) Math.exp(-0.5 * i * i / (sigmaPixels * sigmaPixels));
    }
    sums = new SymmetricKernel(width, height, radius);
    scale = new float[width * height];
    scaleRow = new float[width];
    acrossRow = new float[width];
    sharesAcross = meanShares(width);
    sharesDown = meanShares(height);
    maskWith(null);
  }

  /** So many pixels on every side a pixel has a say in. */
  int radius() {
    return kernel.length - 1;
  }

  double sigma() {
    return sigma;
  }

  /** 1 / sqrt(sum(h^2 m)) at each pixel; 0 where nothing is valid. The array itself. */
  float[] scale() {
    return scale;
  }

  /** The scale where most of the kernel counts; {@link Float#MAX_VALUE} where nothing does. */
  float leastScale() {
    return leastScale;
  }

  /** Sets which pixels count (1) and which don't (0); null for all. */
  void maskWith(float[] mask) {
    float[] ones = mask;
    if (ones == null) {
      ones = new float[scale.length];
      Arrays.fill(ones, 1);
    }
    float[] squared = new float[kernel.length];
    for (int i = 0; i < kernel.length; i++) {
      squared[i] = kernel[i] * kernel[i];
    }
    sums.sum(
        ones,
        squared,
        Area.whole(width, height),
        (row, energies) -> System.arraycopy(energies, 0, scale, row * width, width));
    leastScale = Float.MAX_VALUE;
    for (int i = 0; i < scale.length; i++) {
      scale[i] = scale[i] > 1e-6f ? (float) (1 / Math.sqrt(scale[i])) : 0;
      leastScale = scale[i] > 0 ? Math.min(leastScale, scale[i]) : leastScale;
    }
  }

  /** Filters; masked pixels of the input must be 0. Input not modified, output overwritten. */
  void apply(float[] input, float[] output) {
    apply(input, output, CommonParts.Removed.NOTHING);
  }

  /**
   * Filters a plane whose row and column means were removed. They took some of the noise with them,
   * less at the border than inside; this is made good, so that the noise is even.
   */
  void apply(float[] input, float[] output, CommonParts.Removed removed) {
    apply(input, output, removed, Area.whole(width, height));
  }

  /** The same bits in an area only; the rest of the output is left as it is. */
  void apply(float[] input, float[] output, CommonParts.Removed removed, Area area) {
    sums.sum(input, kernel, area, into(output, removed, area));
  }

  /**
   * Takes the next row from the top of a plane that is filtered as a whole, to the same bits.
   *
   * @param then what {@link #into} gave for that plane's output
   */
  void next(RowPairs pairs, int row, SymmetricKernel.RowOfSums then) {
    sums.next(pairs, row, kernel, then);
  }

  /** Where the rows of {@link #next} go. */
  SymmetricKernel.RowOfSums into(float[] output, CommonParts.Removed removed) {
    return into(output, removed, Area.whole(width, height));
  }

  private SymmetricKernel.RowOfSums into(float[] output, CommonParts.Removed removed, Area area) {
    int n = area.columns();
    Evening evening = evening(removed);
    float[] across = Arrays.copyOfRange(evening.across(), area.left(), area.right());
    return (row, line) -> {
      int start = row * width + area.left();
      System.arraycopy(scale, start, scaleRow, 0, n);
      normalise(line, scaleRow, across, evening.down()[row], n);
      System.arraycopy(line, 0, output, start, n);
    };
  }

  /** What makes good, per column and per row, the noise that removed means took with them. */
  record Evening(float[] across, float[] down) {}

  Evening evening(CommonParts.Removed removed) {
    return new Evening(
        evening(sharesAcross, removed.rowShare()), evening(sharesDown, removed.columnShare()));
  }

  /**
   * What the kernel makes of a profile along one axis, before {@link #normalise}: the kernel of a
   * plane that is a product of two profiles makes of it the product of these.
   */
  float[] along(double[] profile) {
    int radius = radius();
    double[] sum = new double[profile.length];
    for (int k = 0; k < sum.length; k++) {
      int last = Math.min(sum.length - 1, k + radius);
      for (int at = Math.max(0, k - radius); at <= last && profile[k] != 0; at++) {
        sum[at] += kernel[Math.abs(k - at)] * profile[k];
      }
    }
    float[] rounded = new float[sum.length];
    for (int at = 0; at < sum.length; at++) {
      rounded[at] = (float) sum[at];
    }
    return rounded;
  }

  /** Normalises such sums in a row, of columns from one on, as those of {@link #apply}. */
  void normalise(float[] line, int row, int left, int n, Evening evening) {
    System.arraycopy(scale, row * width + left, scaleRow, 0, n);
    float[] across = evening.across();
    if (left > 0) {
      System.arraycopy(across, left, acrossRow, 0, n);
      across = acrossRow;
    }
    normalise(line, scaleRow, across, evening.down()[row], n);
  }

  private static void normalise(float[] line, float[] scale, float[] across, float even, int n) {
    for (int x = 0; x < n; x++) {
      line[x] *= scale[x] * (across[x] * even);
    }
  }

  /**
   * Per place along an axis, 1 / root of the share of white noise that stays in the output when a
   * share of the line's mean is taken out of the input.
   */
  private static float[] evening(double[] meanShares, double share) {
    float[] factors = new float[meanShares.length];
    for (int at = 0; at < factors.length; at++) {
      double lost = share > 0 ? (2 * share - share * share) * meanShares[at] : 0;
      factors[at] = (float) (1 / Math.sqrt(Math.max(0.1, 1 - lost)));
    }
    return factors;
  }

  /** The share of the kernel's energy that lies in the mean of a line of n pixels. */
  private double[] meanShares(int n) {
    double[] shares = new double[n];
    Arrays.setAll(shares, at -> meanShare(n, at));
    return shares;
  }

  private double meanShare(int n, int at) {
    double sum = 0;
    double squares = 0;
    int radius = kernel.length - 1;
    for (int k = Math.max(0, at - radius); k <= Math.min(n - 1, at + radius); k++) {
      float h = kernel[Math.abs(k - at)];
      sum += h;
      squares += h * h;
    }
    return sum * sum / (n * squares);
  }

  /**
   * Sigma of a filter whose white noise output is as rough as this one's after removal: the slope's
   * energy stays, the value's shrinks.
   */
  double fieldSigma(CommonParts.Removed removed) {
    return sigma * Math.pow(Math.max(0.1, amplitudeLeft(removed)), 0.25);
  }

  /** Share of a source's amplitude that is left in the picture's middle after removal. */
  double amplitudeLeft(CommonParts.Removed removed) {
    return (1 - removed.rowShare() * sharesAcross[width / 2])
        * (1 - removed.columnShare() * sharesDown[height / 2]);
  }
}
