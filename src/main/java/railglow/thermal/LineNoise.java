package railglow.thermal;

import java.util.Arrays;

/**
 * Lines whose pixels scatter more between cycles than the picture's: what their noise is over the
 * typical one. Judged by the median along the line of the unfiltered pixels' scatter, which heat or
 * a reflection on part of the line does not move. Immutable.
 *
 * @param rows variance of a row's pixels over the typical one, 1 where nothing speaks for more
 * @param columns likewise for columns
 */
record LineNoise(double[] rows, double[] columns) {
  private static final int FEWEST_PIXELS = 8;
  private static final int SAMPLE = 8192;

  /** Standard error of the median of chi-squared with few degrees of freedom over the mean's. */
  private static final double MEDIAN_ERROR = 1.4;

  /** Most lines have their medians within so many standard errors of the typical one. */
  private static final double LIKELY_ERRORS = 2;

  /** Of the pixels' scatter before any filter; null where no line stands out. */
  static LineNoise of(ChannelMoments plain, float[] mask, int width, int height) {
    int pixels = width * height;
    float[] sizes = new float[pixels];
    float[] some = new float[pixels / stride(pixels) + 1];
    double vI = median(plain.squaresI(), mask, some);
    double vC = median(plain.squaresC(), mask, some);
    if (plain.cycles() < 3 || !(vI > 0) || !(vC > 0)) {
      return null;
    }
    float perI = (float) (1 / vI);
    float perC = (float) (1 / vC);
    for (int i = 0; i < pixels; i++) {
      sizes[i] = plain.squaresI()[i] * perI + plain.squaresC()[i] * perC;
    }
    double typical = median(sizes, mask, some);
    double[] rows = standingOut(sizes, mask, width, height, false, typical, plain.cycles() - 1);
    double[] columns = standingOut(sizes, mask, width, height, true, typical, plain.cycles() - 1);
    return rows == null && columns == null
        ? null
        : new LineNoise(
            rows == null ? ones(height) : rows, columns == null ? ones(width) : columns);
  }

  private static double[] ones(int n) {
    double[] ones = new double[n];
    Arrays.fill(ones, 1);
    return ones;
  }

  private static int stride(int pixels) {
    return Math.max(1, pixels / SAMPLE) | 1;
  }

  private static double median(float[] values, float[] mask, float[] some) {
    int n = 0;
    int stride = stride(values.length);
    for (int i = 0; i < values.length; i += stride) {
      if (mask == null || mask[i] > 0) {
        some[n++] = values[i];
      }
    }
    return n == 0 ? 0 : Selection.median(some, n);
  }

  private static double[] standingOut(
      float[] sizes,
      float[] mask,
      int width,
      int height,
      boolean down,
      double typical,
      int degrees) {
    int lines = down ? width : height;
    int length = down ? height : width;
    double error = MEDIAN_ERROR / Math.sqrt((double) degrees * length);
    double[] ratios = ones(lines);
    Columns.Taker ratio =
        (k, line) -> {
          int n = validOnly(line, mask, down ? k : k * width, down ? width : 1);
          ratios[k] = n < FEWEST_PIXELS ? 1 : median(line, n, typical, error) / typical;
        };
    if (down) {
      Columns.each(sizes, width, height, ratio);
    } else {
      float[] line = new float[width];
      for (int row = 0; row < height; row++) {
        System.arraycopy(sizes, row * width, line, 0, width);
        ratio.take(row, line);
      }
    }
    float[] apart = new float[lines];
    for (int k = 0; k < lines; k++) {
      apart[k] = (float) Math.abs(ratios[k] - 1);
    }
    double usual = CommonParts.MAD_TO_SIGMA * Selection.median(apart, lines);
    double limit = 1 + CommonParts.REJECT_SIGMAS * Math.max(usual, error);
    boolean any = false;
    for (int k = 0; k < lines; k++) {
      ratios[k] = ratios[k] > limit ? ratios[k] : 1;
      any |= ratios[k] > 1;
    }
    return any ? ratios : null;
  }

  /** Moves the valid pixels of a line to its front and counts them. */
  private static int validOnly(float[] line, float[] mask, int from, int step) {
    if (mask == null) {
      return line.length;
    }
    int n = 0;
    for (int j = 0, i = from; j < line.length; j++, i += step) {
      if (mask[i] > 0) {
        line[n++] = line[j];
      }
    }
    return n;
  }

  /** Of the first n, where most likely no more than chance is between it and the typical one. */
  private static float median(float[] line, int n, double typical, double error) {
    float low = (float) (typical * (1 - LIKELY_ERRORS * error));
    float high = (float) (typical * (1 + LIKELY_ERRORS * error));
    return Selection.medianAbout(line, n, low, high);
  }

  /**
   * Per pixel of the output of a filter of a width one over its deviation, 1 where the noise is the
   * typical one.
   */
  float[] perDeviation(double sigma) {
    double[] down = filtered(rows, sigma);
    double[] across = filtered(columns, sigma);
    int width = across.length;
    float[] each = new float[down.length * width];
    for (int row = 0, i = 0; row < down.length; row++) {
      if (row > 0 && down[row] == down[row - 1]) {
        System.arraycopy(each, i - width, each, i, width);
        i += width;
        continue;
      }
      for (int x = 0; x < width; x++, i++) {
        each[i] = perDeviation(down[row], across[x]);
      }
    }
    return each;
  }

  /** The largest deviation of such an output over the typical one. */
  double worstDeviation(double sigma) {
    double down = Arrays.stream(filtered(rows, sigma)).max().orElseThrow();
    double across = Arrays.stream(filtered(columns, sigma)).max().orElseThrow();
    return 1.0 / perDeviation(down, across);
  }

  /** Where a row and a column of these variances over the typical one meet. */
  private static float perDeviation(double down, double across) {
    return (float) (1 / Math.sqrt(Math.max(1, down + across - 1)));
  }

  private static double[] filtered(double[] ratios, double sigma) {
    int reach = (int) Math.ceil(3 * sigma);
    double[] byDistance = new double[reach + 1];
    Arrays.setAll(byDistance, d -> Math.exp(-d * d / (sigma * sigma)));
    double[] result = new double[ratios.length];
    for (int k = 0; k < ratios.length; k++) {
      double sum = 0;
      double weights = 0;
      for (int j = Math.max(0, k - reach); j <= Math.min(ratios.length - 1, k + reach); j++) {
        double weight = byDistance[Math.abs(j - k)];
        sum += weight * ratios[j];
        weights += weight;
      }
      result[k] = sum / weights;
    }
    return result;
  }
}
