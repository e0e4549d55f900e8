package railglow.thermal;

/**
 * The picture along the line between two places: averages as wide across the line as the images
 * are, and narrow along it, so that a dip between two images shows deeper and with less noise than
 * in round averages. Immutable, but shares its window.
 */
final class LineProfile {
  /** Narrow, so that two images a width and a half apart still dip in between. */
  private static final double ALONG_PIXELS = 1;

  private final GaussianFit.Window window;
  private final double fromColumn;
  private final double fromRow;
  private final double columns;
  private final double rows;
  private final double acrossPixels;

  /**
   * @param window holds both places
   * @param acrossPixels sigma of the averages across the line
   */
  LineProfile(
      GaussianFit.Window window,
      double fromColumn,
      double fromRow,
      double toColumn,
      double toRow,
      double acrossPixels) {
    this.window = window;
    this.fromColumn = fromColumn;
    this.fromRow = fromRow;
    this.columns = toColumn - fromColumn;
    this.rows = toRow - fromRow;
    this.acrossPixels = acrossPixels;
  }

  /** Amplitude, unit of the plane, at a share of the way; 0 without valid pixels. */
  double at(double share) {
    double length = Math.max(1e-9, Math.hypot(columns, rows));
    double alongX = columns / length;
    double alongY = rows / length;
    double sum = 0;
    double energy = 0;
    for (int y = 0, k = 0; y < window.rows(); y++) {
      for (int x = 0; x < window.columns(); x++, k++) {
        if (window.valid()[k]) {
          double dx = window.left() + x - fromColumn - share * columns;
          double dy = window.top() + y - fromRow - share * rows;
          double along = (alongX * dx + alongY * dy) / ALONG_PIXELS;
          double across = (alongX * dy - alongY * dx) / acrossPixels;
          double g = Math.exp(-0.5 * (along * along + across * across));
          sum += g * window.values()[k];
          energy += g * g;
        }
      }
    }
    return energy > 0 ? sum / energy : 0;
  }

  /** Noise of the difference of two averages, for so much per pixel. */
  double noiseOfDifference(double noise) {
    return noise * Math.sqrt(2 / (Math.PI * ALONG_PIXELS * acrossPixels));
  }
}
