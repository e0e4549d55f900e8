package railglow.thermal;

import java.util.Arrays;

/**
 * Takes out what the whole frame, a row or a column has in common, robustly: pixels far from the
 * rest (a source among them) have no say. Row and column parts are shrunk by how far they stand out
 * of what pixel noise alone would give (the best linear prediction of a random effect): a camera
 * without such parts loses nothing to their removal. A line unlike the other lines loses the whole
 * of its part, see WildLines. Stateless.
 */
final class CommonParts {
  static final double REJECT_SIGMAS = 3.5;
  static final double MAD_TO_SIGMA = 1.4826;
  private static final int SAMPLE = 4099;
  private static final int PASSES = 2;

  private CommonParts() {}

  /**
   * What was done to a plane.
   *
   * @param sigma robust standard deviation of what is left
   * @param rowShare share of the row means that was taken out, 0 to 1
   * @param columnShare likewise for columns
   * @param wildRows the rows whose part was taken out wholly; null for none
   * @param wildColumns likewise for columns
   */
  record Removed(
      double sigma,
      double rowShare,
      double columnShare,
      boolean[] wildRows,
      boolean[] wildColumns) {
    static final Removed NOTHING = new Removed(0, 0, 0);

    /** No line was wild. */
    Removed(double sigma, double rowShare, double columnShare) {
      this(sigma, rowShare, columnShare, null, null);
    }

    double shareOfRow(int row) {
      return wildRows != null && wildRows[row] ? 1 : rowShare;
    }

    double shareOfColumn(int column) {
      return wildColumns != null && wildColumns[column] ? 1 : columnShare;
    }
  }

  /**
   * Removes the parts in place; masked pixels are set to 0.
   *
   * @param mask 1 for valid and 0 for invalid pixels, or null for all valid
   */
  static Removed remove(float[] plane, int width, int height, float[] mask) {
    float[] sample = sampleOf(plane, mask);
    if (sample.length == 0) {
      Arrays.fill(plane, 0);
      return Removed.NOTHING;
    }
    float centre = Selection.median(sample, sample.length);
    for (int i = 0; i < plane.length; i++) {
      plane[i] = mask == null || mask[i] > 0 ? plane[i] - centre : 0;
    }
    double sigma = robustSigma(plane, mask);
    Removed removed = Removed.NOTHING;
    if (sigma > 0) {
      double[] rows = new double[height];
      double[] columns = new double[width];
      WildLines lines = new WildLines(plane, width, height, mask);
      lines.takeOutFar(REJECT_SIGMAS * sigma, sigma, rows, columns);
      for (int pass = 0; pass < PASSES; pass++) {
        takeOutColumns(plane, width, height, mask, sigma, columns);
        takeOutRows(plane, width, height, mask, sigma, rows);
        sigma = robustSigma(plane, mask);
      }
      removed = giveBack(plane, width, height, mask, lines, rows, columns, sigma);
      takeOutMean(plane, mask, sigma);
    }
    return removed;
  }

  private static void takeOutRows(
      float[] plane, int width, int height, float[] mask, double sigma, double[] parts) {
    float limit = (float) (REJECT_SIGMAS * sigma);
    for (int row = 0; row < height; row++) {
      double sum = 0;
      int n = 0;
      for (int i = row * width; i < (row + 1) * width; i++) {
        if (Math.abs(plane[i]) <= limit && (mask == null || mask[i] > 0)) {
          sum += plane[i];
          n++;
        }
      }
      // a row that lies wholly outside has no robust mean: left alone
      float part = n >= width / 4.0 ? (float) (sum / n) : 0;
      parts[row] += part;
      for (int i = row * width; i < (row + 1) * width; i++) {
        plane[i] = mask == null || mask[i] > 0 ? plane[i] - part : 0;
      }
    }
  }

  private static void takeOutColumns(
      float[] plane, int width, int height, float[] mask, double sigma, double[] parts) {
    float limit = (float) (REJECT_SIGMAS * sigma);
    double[] sums = new double[width];
    int[] leftOut = new int[width];
    for (int row = 0, i = 0; row < height; row++) {
      for (int x = 0; x < width; x++, i++) {
        if (Math.abs(plane[i]) <= limit && (mask == null || mask[i] > 0)) {
          sums[x] += plane[i];
        } else {
          leftOut[x]++;
        }
      }
    }
    for (int x = 0; x < width; x++) {
      int count = height - leftOut[x];
      sums[x] = count >= height / 4.0 ? sums[x] / count : 0;
      parts[x] += sums[x];
    }
    for (int row = 0, i = 0; row < height; row++) {
      for (int x = 0; x < width; x++, i++) {
        plane[i] = mask == null || mask[i] > 0 ? (float) (plane[i] - sums[x]) : 0;
      }
    }
  }

  /** Puts back the share of each part that pixel noise explains. */
  private static Removed giveBack(
      float[] plane,
      int width,
      int height,
      float[] mask,
      WildLines lines,
      double[] rows,
      double[] columns,
      double sigma) {
    double rowShare = noiseShare(rows, sigma * sigma / width);
    double columnShare = noiseShare(columns, sigma * sigma / height);
    boolean[] wildRows = lines.standingOut(rows, sigma, false);
    boolean[] wildColumns = lines.standingOut(columns, sigma, true);
    double[] columnBack = new double[width];
    for (int x = 0; x < width; x++) {
      columnBack[x] = wildColumns[x] ? 0 : columnShare * columns[x];
    }
    for (int row = 0, i = 0; row < height; row++) {
      double back = wildRows[row] ? 0 : rowShare * rows[row];
      for (int x = 0; x < width; x++, i++) {
        if (mask == null || mask[i] > 0) {
          plane[i] += (float) (back + columnBack[x]);
        }
      }
    }
    return new Removed(sigma, 1 - rowShare, 1 - columnShare, wildRows, wildColumns);
  }

  private static double noiseShare(double[] parts, double noiseVariance) {
    double[] magnitudes = new double[parts.length];
    for (int i = 0; i < parts.length; i++) {
      magnitudes[i] = Math.abs(parts[i]);
    }
    Arrays.sort(magnitudes);
    double robust = MAD_TO_SIGMA * magnitudes[magnitudes.length / 2];
    double squares = 0;
    int n = 0;
    for (double m : magnitudes) {
      if (m <= REJECT_SIGMAS * robust) {
        squares += m * m;
        n++;
      }
    }
    if (n == 0 || squares == 0) {
      return 0;
    }
    double observed = squares / n;
    return Math.min(1, doubt(n) * noiseVariance / observed);
  }

  /** So many times what pixel noise alone would give may so many lines show by chance. */
  static double doubt(int lines) {
    return 1 + 2.5 * Math.sqrt(2.0 / lines);
  }

  private static void takeOutMean(float[] plane, float[] mask, double sigma) {
    float limit = (float) (REJECT_SIGMAS * sigma);
    double sum = 0;
    int n = 0;
    for (int i = 0; i < plane.length; i++) {
      if (Math.abs(plane[i]) <= limit && (mask == null || mask[i] > 0)) {
        sum += plane[i];
        n++;
      }
    }
    float mean = n == 0 ? 0 : (float) (sum / n);
    for (int i = 0; i < plane.length; i++) {
      if (mask == null || mask[i] > 0) {
        plane[i] -= mean;
      }
    }
  }

  /** 1.4826 x the median magnitude, from an even sample. */
  static double robustSigma(float[] plane, float[] mask) {
    float[] sample = sampleOf(plane, mask);
    if (sample.length == 0) {
      return 0;
    }
    for (int i = 0; i < sample.length; i++) {
      sample[i] = Math.abs(sample[i]);
    }
    return MAD_TO_SIGMA * Selection.median(sample, sample.length);
  }

  private static float[] sampleOf(float[] plane, float[] mask) {
    // a stride that shares no factor with usual widths visits rows and columns evenly
    int stride = Math.max(1, plane.length / SAMPLE) | 1;
    float[] sample = new float[plane.length / stride + 1];
    int n = 0;
    for (int i = 0; i < plane.length; i += stride) {
      if (mask == null || mask[i] > 0) {
        sample[n++] = plane[i];
      }
    }
    return Arrays.copyOf(sample, n);
  }
}
