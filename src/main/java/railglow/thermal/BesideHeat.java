package railglow.thermal;

/**
 * The pixels outside the heat of one look, from which the {@link LineResidue} of each channel is
 * estimated in its mean plane: since lines are constants, this gives what cleaning every cycle
 * without the warm pixels would have given. Owns the work space that channels share; not
 * thread-safe.
 */
final class BesideHeat {
  private static final double REJECT_SIGMAS = 3.5;

  /** With fewer pixels outside the heat a line is left alone. */
  private static final double LEAST_SHARE = 0.25;

  /** With a smaller share of the picture beside the lines their level is not taken from there. */
  private static final double LEAST_BESIDE = 0.02;

  private static final int PASSES = 2;

  /** Noise may be so many of its own standard errors larger. */
  private static final double DOUBT = 2.5;

  private final HeatRegion heat;
  private final float[] mask;
  private final int width;
  private final int height;
  private final float[] rest;
  private final float[] beside;
  private final boolean[] usable;

  /**
   * @param mask 1 for valid and 0 for invalid pixels, or null for all valid
   */
  BesideHeat(HeatRegion heat, float[] mask, int width, int height) {
    this.heat = heat;
    this.mask = mask;
    this.width = width;
    this.height = height;
    rest = new float[width * height];
    beside = new float[width * height];
    usable = new boolean[width * height];
  }

  /**
   * What is to be subtracted from a mean plane.
   *
   * @param removed what cleaning takes out of a cycle of these
   */
  LineResidue residue(float[] mean, CommonParts.Removed removed) {
    float level = levelBesideLines(mean);
    for (int i = 0; i < rest.length; i++) {
      rest[i] = mean[i] - level;
    }
    double limit = REJECT_SIGMAS * CommonParts.robustSigma(rest, mask);
    for (int i = 0; i < usable.length; i++) {
      usable[i] = !heat.pixels()[i] && isValid(i) && Math.abs(rest[i]) <= limit;
    }
    double[] rows = new double[height];
    double[] columns = new double[width];
    int[] inRow = new int[height];
    int[] inColumn = new int[width];
    for (int pass = 0; pass < PASSES; pass++) {
      takeOut(heat.columns(), columns, inColumn, true);
      takeOut(heat.rows(), rows, inRow, false);
    }
    double beyond = offset();
    double offset = level + beyond;
    double variance = variance(beyond);
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

  private boolean isValid(int i) {
    return mask == null || mask[i] > 0;
  }

  /** Where neither row nor column crosses heat; 0 where that is nearly nowhere. */
  private float levelBesideLines(float[] mean) {
    int n = 0;
    for (int row = 0; row < height; row++) {
      for (int x = 0, i = row * width; x < width && !heat.rows()[row]; x++, i++) {
        if (!heat.columns()[x] && isValid(i)) {
          beside[n++] = mean[i];
        }
      }
    }
    return n < LEAST_BESIDE * mean.length ? 0 : Selection.medianOfMany(beside, n, rest);
  }

  /** Takes the mean of the usable pixels out of every line that crosses heat. */
  private void takeOut(boolean[] crosses, double[] parts, int[] counts, boolean down) {
    int length = rest.length / parts.length;
    int step = down ? width : 1;
    double least = LEAST_SHARE * length;
    for (int line = 0; line < parts.length; line++) {
      int from = down ? line : line * width;
      counts[line] = 0;
      if (crosses[line]) {
        double sum = 0;
        for (int k = 0, i = from; k < length; k++, i += step) {
          if (usable[i]) {
            sum += rest[i];
            counts[line]++;
          }
        }
        double part = counts[line] >= least ? sum / counts[line] : 0;
        parts[line] += part;
        for (int k = 0, i = from; k < length; k++, i += step) {
          rest[i] -= (float) part;
        }
      }
    }
  }

  private double offset() {
    double sum = 0;
    int n = 0;
    for (int i = 0; i < rest.length; i++) {
      if (usable[i]) {
        sum += rest[i];
        n++;
      }
    }
    return n == 0 ? 0 : sum / n;
  }

  private double variance(double centre) {
    double sum = 0;
    int n = 0;
    for (int i = 0; i < rest.length; i++) {
      if (usable[i]) {
        sum += (rest[i] - centre) * (rest[i] - centre);
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
