package railglow.thermal;

/**
 * Rows and columns unlike the others in one cycle: their pixels agree with one another but not with
 * the picture. That is a line's own amplifier, not heat, whose pixels do not agree along a whole
 * line. Judged by the line's median, which a warm place hardly moves. Made for one plane, which it
 * changes; not thread-safe.
 */
final class WildLines {
  /** A line that is mostly inside the limit for outliers has a robust mean without help. */
  private static final double FAR_SHARE = 0.1;

  /** The pixels of a line agree when they scatter at most so many times like the picture's... */
  private static final double AGREEMENT = 1.5;

  /** ...or by so many of the root of their number more: four standard errors of their scatter. */
  private static final double AGREEMENT_BY_CHANCE = 5;

  /** Standard error of a median over that of a mean. */
  private static final double MEDIAN_ERROR = 1.2533;

  private static final int FEWEST_PIXELS = 8;

  private final float[] plane;
  private final int width;
  private final int height;
  private final float[] mask;
  private final float[] line;

  /**
   * @param mask 1 for valid and 0 for invalid pixels, or null for all valid
   */
  WildLines(float[] plane, int width, int height, float[] mask) {
    this.plane = plane;
    this.width = width;
    this.height = height;
    this.mask = mask;
    line = new float[Math.max(width, height)];
  }

  /**
   * Takes the median out of lines of which much lies beyond a limit and whose pixels agree; a mean
   * without outliers would be one of the pixels nearest to the picture's.
   *
   * @param rows what was taken out is added
   * @param columns likewise
   */
  void takeOutFar(double limit, double sigma, double[] rows, double[] columns) {
    int[] inRow = new int[height];
    int[] inColumn = new int[width];
    float far = (float) limit;
    for (int row = 0, i = 0; row < height; row++) {
      for (int x = 0; x < width; x++, i++) {
        if (Math.abs(plane[i]) > far) {
          inRow[row]++;
          inColumn[x]++;
        }
      }
    }
    takeOut(inRow, FAR_SHARE * width, sigma, rows, false);
    takeOut(inColumn, FAR_SHARE * height, sigma, columns, true);
  }

  private void takeOut(int[] beyond, double most, double sigma, double[] parts, boolean down) {
    for (int k = 0; k < parts.length; k++) {
      if (beyond[k] > most) {
        int n = pixels(k, down);
        float median = n < FEWEST_PIXELS ? 0 : Selection.median(line, n);
        if (agree(k, median, sigma, down)) {
          parts[k] += median;
          int step = down ? width : 1;
          int from = down ? k : k * width;
          for (int i = from, j = 0; j < (down ? height : width); i += step, j++) {
            plane[i] = mask == null || mask[i] > 0 ? plane[i] - median : 0;
          }
        }
      }
    }
  }

  /**
   * Which lines have parts that neither noise nor the scatter of the other lines' parts explains.
   *
   * @param parts taken out of the plane so far
   * @param sigma of the plane's pixels
   */
  boolean[] standingOut(double[] parts, double sigma, boolean down) {
    float[] sizes = new float[parts.length];
    for (int k = 0; k < sizes.length; k++) {
      sizes[k] = (float) Math.abs(parts[k]);
    }
    double typical = CommonParts.MAD_TO_SIGMA * Selection.median(sizes, sizes.length);
    double perPixel = sigma / Math.sqrt(down ? height : width);
    boolean[] out = new boolean[parts.length];
    for (int k = 0; k < out.length; k++) {
      if (Math.abs(parts[k]) > CommonParts.REJECT_SIGMAS * Math.max(typical, perPixel)) {
        int n = pixels(k, down);
        double median = n < FEWEST_PIXELS ? 0 : Selection.median(line, n);
        double error = MEDIAN_ERROR * sigma / Math.sqrt(Math.max(1, n));
        out[k] =
            Math.abs(parts[k] + median) > CommonParts.REJECT_SIGMAS * Math.max(typical, error)
                && agree(k, (float) median, sigma, down);
      }
    }
    return out;
  }

  private boolean agree(int k, float median, double sigma, boolean down) {
    int n = pixels(k, down);
    if (n < FEWEST_PIXELS) {
      return false;
    }
    for (int j = 0; j < n; j++) {
      line[j] = Math.abs(line[j] - median);
    }
    double most = Math.max(AGREEMENT, 1 + AGREEMENT_BY_CHANCE / Math.sqrt(n));
    return CommonParts.MAD_TO_SIGMA * Selection.median(line, n) <= most * sigma;
  }

  /** Copies the valid pixels of a line; returns how many. */
  private int pixels(int k, boolean down) {
    int n = 0;
    int step = down ? width : 1;
    int from = down ? k : k * width;
    int count = down ? height : width;
    for (int i = from, j = 0; j < count; i += step, j++) {
      if (mask == null || mask[i] > 0) {
        line[n++] = plane[i];
      }
    }
    return n;
  }
}
