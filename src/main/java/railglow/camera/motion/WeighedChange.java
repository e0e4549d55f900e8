package railglow.camera.motion;

import java.util.Arrays;

/**
 * A sum over an image's change, each square of pixels with a weight of its own. Weights are whole
 * numbers with a common unit, for the loop becomes vector code with ints. Not thread-safe.
 */
final class WeighedChange {
  /** The largest weight: rounding adds less than a hundredth of what noise does. */
  private static final int LARGEST = 1 << 11;

  private final int[][] weights;
  private final double unit;
  private final double gain;
  private final int[] columns;

  /**
   * @param perPixel the weight of each pixel of a picture
   * @param width of that picture
   * @param height likewise
   * @param counts of the camera that make up one of its pixels
   */
  WeighedChange(float[] perPixel, int width, int height, int counts) {
    int across = width / 2;
    weights = new int[height / 2][across];
    columns = new int[across];
    double[] exact = new double[weights.length * across];
    double largest = 0;
    double squares = 0;
    for (int i = 0; i < exact.length; i++) {
      int at = i / across * 2 * width + i % across * 2;
      double sum = perPixel[at] + perPixel[at + 1];
      exact[i] = (sum + perPixel[at + width] + perPixel[at + width + 1]) / 4;
      largest = Math.max(largest, Math.abs(exact[i]));
      squares += 4 * exact[i] * exact[i];
    }
    double step = largest == 0 ? 1 : largest / LARGEST;
    for (int i = 0; i < exact.length; i++) {
      weights[i / across][i % across] = (int) Math.round(exact[i] / step);
    }
    unit = step / counts;
    gain = Math.sqrt(squares);
  }

  /** The largest change that a column may add up to, signs aside. */
  static int mostChange() {
    return Integer.MAX_VALUE / LARGEST;
  }

  /** The standard deviation that white noise of one pixel of the picture makes of the sum. */
  double sigma(double noise) {
    return gain * noise;
  }

  /** The sum. */
  double of(int[][] change) {
    Arrays.fill(columns, 0);
    for (int row = 0; row < weights.length; row++) {
      addProducts(columns, weights[row], change[row]);
    }
    double sum = 0;
    for (int column : columns) {
      sum += column;
    }
    return unit * sum;
  }

  private static void addProducts(int[] sums, int[] weights, int[] values) {
    for (int x = 0; x < sums.length; x++) {
      sums[x] += weights[x] * values[x];
    }
  }
}
