package railglow.board.compare;

import railglow.thermal.Plane;

/**
 * A plane smoothed by a Gaussian with zero weight outside the picture, and between its pixels.
 * Immutable.
 */
final class SmoothPlane {
  private static final double REACH_SIGMAS = 3;
  private static final double MAD_TO_SIGMA = 1.4826;

  private final int width;
  private final int height;
  private final double[] values;

  SmoothPlane(Plane plane, double sigmaPixels) {
    width = plane.width();
    height = plane.height();
    double[] raw = new double[width * height];
    for (int i = 0; i < raw.length; i++) {
      raw[i] = plane.values()[i];
    }
    values = along(along(raw, sigmaPixels, 1, width, height), sigmaPixels, width, height, width);
  }

  /** Smooths lines of a length whose pixels lie a stride apart. */
  private static double[] along(double[] from, double sigma, int stride, int length, int lines) {
    int reach = (int) Math.ceil(REACH_SIGMAS * sigma);
    double[] weights = new double[reach + 1];
    for (int k = 0; k <= reach; k++) {
      weights[k] = StrictMath.exp(-0.5 * k * k / (sigma * sigma));
    }
    int lineStride = stride == 1 ? length : 1;
    double[] to = new double[from.length];
    for (int line = 0; line < lines; line++) {
      for (int i = 0; i < length; i++) {
        double sum = 0;
        double weight = 0;
        for (int k = Math.max(0, i - reach); k <= Math.min(length - 1, i + reach); k++) {
          double value = from[line * lineStride + k * stride];
          if (value == value) {
            sum += weights[Math.abs(k - i)] * value;
            weight += weights[Math.abs(k - i)];
          }
        }
        to[line * lineStride + i * stride] = weight > 0 ? sum / weight : Double.NaN;
      }
    }
    return to;
  }

  int width() {
    return width;
  }

  int height() {
    return height;
  }

  /**
   * Between pixels by cubic convolution (Keys, IEEE Trans. ASSP 29 (1981) 1153, a = -1/2): straight
   * lines would cut the tops of heat off; NaN near the border and outside.
   */
  double at(double column, double row) {
    int c = (int) Math.floor(column);
    int r = (int) Math.floor(row);
    if (c < 1 || r < 1 || c + 2 >= width || r + 2 >= height) {
      return Double.NaN;
    }
    double u = column - c;
    double v = row - r;
    double sum = 0;
    for (int k = -1; k <= 2; k++) {
      double line = 0;
      for (int l = -1; l <= 2; l++) {
        line += cubic(u - l) * values[(r + k) * width + c + l];
      }
      sum += cubic(v - k) * line;
    }
    return sum;
  }

  private static double cubic(double distance) {
    double d = Math.abs(distance);
    return d < 1 ? (1.5 * d - 2.5) * d * d + 1 : d < 2 ? ((2.5 - 0.5 * d) * d - 4) * d + 2 : 0;
  }

  /** Steepness at a place, per pixel; NaN near the border. */
  double steepness(double column, double row) {
    double dc = (at(column + 1, row) - at(column - 1, row)) / 2;
    double dr = (at(column, row + 1) - at(column, row - 1)) / 2;
    return Math.hypot(dc, dr);
  }

  /** Noise by the median absolute deviation from the median, so that heat in it hardly counts. */
  double noise() {
    double[] finite = java.util.Arrays.stream(values).filter(Double::isFinite).sorted().toArray();
    if (finite.length == 0) {
      return Double.NaN;
    }
    double median = finite[finite.length / 2];
    double[] off =
        java.util.Arrays.stream(finite).map(value -> Math.abs(value - median)).sorted().toArray();
    return MAD_TO_SIGMA * off[off.length / 2];
  }
}
