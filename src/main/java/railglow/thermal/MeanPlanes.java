package railglow.thermal;

import java.util.List;

/**
 * The unfiltered mean planes of one look, cut into windows for fits, with the other sources taken
 * out. Not thread-safe.
 */
class MeanPlanes {
  private final ChannelMoments moments;
  private final ReducedCycle later;
  private final int width;
  private final int height;

  MeanPlanes(ChannelMoments moments, int width, int height) {
    this(moments, null, width, height);
  }

  /**
   * @param later what the means without the first cycle are above those of all; null for planes of
   *     all cycles
   */
  MeanPlanes(ChannelMoments moments, ReducedCycle later, int width, int height) {
    this.moments = moments;
    this.later = later;
    this.width = width;
    this.height = height;
  }

  int width() {
    return width;
  }

  int height() {
    return height;
  }

  /** That the means are of. */
  int cycles() {
    return later == null ? moments.cycles() : moments.cycles() - 1;
  }

  /** Of both channels at a pixel. */
  double size(int pixel) {
    return Math.hypot(moments.meanI()[pixel], moments.meanC()[pixel]);
  }

  boolean isInside(double x, double y) {
    return x >= 0 && x <= width - 1 && y >= 0 && y <= height - 1;
  }

  /** a I + b C around a place, without the others. */
  GaussianFit.Window window(
      int column, int row, double sigma, double a, double b, List<Blob> others) {
    return windowWithin(column, row, reach(sigma), a, b, others);
  }

  private static int reach(double sigma) {
    return (int) Math.ceil(2.5 * Math.max(sigma, 1.5)) + 1;
  }

  /** For {@link #smoothedAt}. */
  static PixelShape shape(double sigma) {
    return new PixelShape(sigma, reach(sigma));
  }

  /** The same of so many pixels to either side. */
  GaussianFit.Window windowWithin(
      int column, int row, int reach, double a, double b, List<Blob> others) {
    int left = Math.max(0, column - reach);
    int top = Math.max(0, row - reach);
    int columns = Math.min(width - 1, column + reach) - left + 1;
    int rows = Math.min(height - 1, row + reach) - top + 1;
    double[] values = new double[columns * rows];
    boolean[] valid = new boolean[values.length];
    for (int y = 0, k = 0; y < rows; y++) {
      for (int x = 0; x < columns; x++, k++) {
        int i = (top + y) * width + left + x;
        double value = a * moments.meanI()[i] + b * moments.meanC()[i];
        if (later != null) {
          value += a * later.inPhase()[i] + b * later.quadrature()[i];
        }
        for (Blob other : others) {
          value -= (a * other.inPhase() + b * other.quadrature()) * other.shape(left + x, top + y);
        }
        values[k] = value;
        valid[k] = moments.squaresI()[i] > 0;
      }
    }
    return new GaussianFit.Window(left, top, columns, rows, values, valid);
  }

  /** Amplitude along a I + b C of a Gaussian at a place. */
  double smoothed(double x, double y, double sigma, double a, double b, List<Blob> others) {
    GaussianFit.Window window =
        window((int) Math.round(x), (int) Math.round(y), sigma, a, b, others);
    return GaussianFit.bestAmplitude(window, x, y, sigma);
  }

  /** Amplitudes in phase and in quadrature of a Gaussian at a place. */
  double[] smoothed(double x, double y, double sigma, List<Blob> others) {
    return new double[] {smoothed(x, y, sigma, 1, 0, others), smoothed(x, y, sigma, 0, 1, others)};
  }

  /**
   * Both at once.
   *
   * @param energy sum of the squared unit shape over the window
   */
  record Smoothed(double inPhase, double quadrature, double energy) {}

  /** Of a Gaussian in the middle of a pixel. */
  Smoothed smoothedAt(int column, int row, PixelShape shape, List<Blob> others) {
    GaussianFit.Window inPhase = window(column, row, shape.sigma(), 1, 0, others);
    GaussianFit.Window quadrature = window(column, row, shape.sigma(), 0, 1, others);
    double i = 0;
    double c = 0;
    double energy = 0;
    for (int y = 0, k = 0; y < inPhase.rows(); y++) {
      for (int x = 0; x < inPhase.columns(); x++, k++) {
        if (inPhase.valid()[k]) {
          double g = shape.at(inPhase.left() + x - column, inPhase.top() + y - row);
          i += g * inPhase.values()[k];
          c += g * quadrature.values()[k];
          energy += g * g;
        }
      }
    }
    return energy > 0 ? new Smoothed(i / energy, c / energy, energy) : new Smoothed(0, 0, 0);
  }
}
