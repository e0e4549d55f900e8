package railglow.thermal;

/**
 * What the removal of common parts took from the lines that cross heat: its skirts lie within pixel
 * noise in every single cycle, are taken for part of the line and leave a negative line in the
 * mean. Estimated in the mean plane from the pixels outside the heat: since lines are constants,
 * this gives what cleaning every cycle without the warm pixels would have given. Immutable.
 *
 * @param rows what every pixel of a row has of it
 * @param columns likewise
 */
record LineResidue(double[] rows, double[] columns) {
  private static final double REJECT_SIGMAS = 3.5;

  /** With fewer pixels outside the heat a line is left alone. */
  private static final double LEAST_SHARE = 0.25;

  /** With a smaller share of the picture beside the lines their level is not taken from there. */
  private static final double LEAST_BESIDE = 0.02;

  private static final int PASSES = 2;

  /** Noise may be so many of its own standard errors larger. */
  private static final double DOUBT = 2.5;

  /**
   * What is to be subtracted from a mean plane.
   *
   * @param mask 1 for valid and 0 for invalid pixels, or null for all valid
   * @param removed what cleaning takes out of a cycle of these
   */
  static LineResidue of(
      float[] mean,
      boolean[] heat,
      float[] mask,
      int width,
      int height,
      CommonParts.Removed removed) {
    float[] rest = new float[mean.length];
    boolean[] warmRows = new boolean[height];
    boolean[] warmColumns = new boolean[width];
    for (int row = 0, i = 0; row < height; row++) {
      for (int x = 0; x < width; x++, i++) {
        warmRows[row] |= heat[i];
        warmColumns[x] |= heat[i];
      }
    }
    float level = levelBesideLines(mean, warmRows, warmColumns, mask, rest);
    for (int i = 0; i < rest.length; i++) {
      rest[i] = mean[i] - level;
    }
    double limit = REJECT_SIGMAS * CommonParts.robustSigma(rest, mask);
    boolean[] usable = new boolean[mean.length];
    for (int i = 0; i < usable.length; i++) {
      usable[i] = !heat[i] && (mask == null || mask[i] > 0) && Math.abs(rest[i]) <= limit;
    }
    double[] rows = new double[height];
    double[] columns = new double[width];
    int[] inRow = new int[height];
    int[] inColumn = new int[width];
    for (int pass = 0; pass < PASSES; pass++) {
      takeOut(rest, usable, warmColumns, columns, inColumn, width, true);
      takeOut(rest, usable, warmRows, rows, inRow, width, false);
    }
    double beyond = offset(rest, usable);
    double offset = level + beyond;
    double variance = variance(rest, usable, beyond);
    double keepRows = kept(rows, inRow, variance);
    double keepColumns = kept(columns, inColumn, variance);
    for (int x = 0; x < width; x++) {
      columns[x] = keepColumns * removed.shareOfColumn(x) * columns[x];
    }
    for (int row = 0; row < height; row++) {
      rows[row] = keepRows * removed.shareOfRow(row) * rows[row] + offset;
    }
    return new LineResidue(rows, columns);
  }

  /** Subtracts it from a mean plane where there is data. */
  void subtractFrom(float[] mean, float[] mask) {
    for (int row = 0, i = 0; row < rows.length; row++) {
      for (int x = 0; x < columns.length; x++, i++) {
        if (mask == null || mask[i] > 0) {
          mean[i] -= (float) (rows[row] + columns[x]);
        }
      }
    }
  }

  /** The plane of it where there is no data, 0 elsewhere. */
  float[] atHoles(float[] mask) {
    float[] plane = new float[mask.length];
    for (int row = 0, i = 0; row < rows.length; row++) {
      for (int x = 0; x < columns.length; x++, i++) {
        plane[i] = mask[i] > 0 ? 0 : (float) (rows[row] + columns[x]);
      }
    }
    return plane;
  }

  /** Where neither row nor column crosses heat; 0 where that is nearly nowhere. */
  private static float levelBesideLines(
      float[] mean, boolean[] rows, boolean[] columns, float[] mask, float[] work) {
    float[] beside = new float[mean.length];
    int n = 0;
    int width = columns.length;
    for (int row = 0; row < rows.length; row++) {
      for (int x = 0, i = row * width; x < width && !rows[row]; x++, i++) {
        if (!columns[x] && (mask == null || mask[i] > 0)) {
          beside[n++] = mean[i];
        }
      }
    }
    return n < LEAST_BESIDE * mean.length ? 0 : Selection.medianOfMany(beside, n, work);
  }

  /** Takes the mean of the usable pixels out of every line that crosses heat. */
  private static void takeOut(
      float[] plane,
      boolean[] usable,
      boolean[] crosses,
      double[] parts,
      int[] counts,
      int width,
      boolean down) {
    int length = plane.length / parts.length;
    int step = down ? width : 1;
    double least = LEAST_SHARE * length;
    for (int line = 0; line < parts.length; line++) {
      int from = down ? line : line * width;
      counts[line] = 0;
      if (crosses[line]) {
        double sum = 0;
        for (int k = 0, i = from; k < length; k++, i += step) {
          if (usable[i]) {
            sum += plane[i];
            counts[line]++;
          }
        }
        double part = counts[line] >= least ? sum / counts[line] : 0;
        parts[line] += part;
        for (int k = 0, i = from; k < length; k++, i += step) {
          plane[i] -= (float) part;
        }
      }
    }
  }

  private static double offset(float[] plane, boolean[] usable) {
    double sum = 0;
    int n = 0;
    for (int i = 0; i < plane.length; i++) {
      if (usable[i]) {
        sum += plane[i];
        n++;
      }
    }
    return n == 0 ? 0 : sum / n;
  }

  private static double variance(float[] plane, boolean[] usable, double centre) {
    double sum = 0;
    int n = 0;
    for (int i = 0; i < plane.length; i++) {
      if (usable[i]) {
        sum += (plane[i] - centre) * (plane[i] - centre);
        n++;
      }
    }
    return n == 0 ? 0 : sum / n;
  }

  /** The share of the lines' parts that noise does not explain. */
  private static double kept(double[] parts, int[] counts, double pixelVariance) {
    double squares = 0;
    double noise = 0;
    int n = 0;
    for (int line = 0; line < parts.length; line++) {
      if (parts[line] != 0) {
        squares += parts[line] * parts[line];
        noise += pixelVariance / counts[line];
        n++;
      }
    }
    double doubt = 1 + DOUBT * Math.sqrt(2.0 / Math.max(1, n));
    return squares > 0 ? Math.max(0, 1 - doubt * noise / squares) : 0;
  }
}
