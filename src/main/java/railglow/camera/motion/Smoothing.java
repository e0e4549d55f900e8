package railglow.camera.motion;

import java.util.Arrays;

/**
 * A separable Gaussian on a small image, with its weights renewed at the borders. Allocates nothing
 * per image. Rows are arrays of their own, so that the compiler makes vector code (decision 0090).
 * Not thread-safe.
 */
final class Smoothing {
  private final int width;
  private final int height;
  private final int radius;
  private final float[] kernel;
  private final float[][] rows;
  private final float[] from;
  private final float[] sum;

  Smoothing(int width, int height, double sigma) {
    this.width = width;
    this.height = height;
    this.radius = Math.min((int) Math.ceil(3 * sigma), Math.min(width, height) - 1);
    this.kernel = new float[2 * radius + 1];
    double total = 0;
    for (int i = -radius; i <= radius; i++) {
      total += Math.exp(-i * i / (2 * sigma * sigma));
    }
    for (int i = -radius; i <= radius; i++) {
      kernel[i + radius] = (float) (Math.exp(-i * i / (2 * sigma * sigma)) / total);
    }
    this.rows = new float[height][width];
    this.from = new float[width];
    this.sum = new float[width];
  }

  /** By how much white noise shrinks in variance, away from the borders. */
  double varianceFactor() {
    double squares = 0;
    for (float weight : kernel) {
      squares += weight * weight;
    }
    return squares * squares;
  }

  void apply(float[] image) {
    for (int row = 0; row < height; row++) {
      alongRow(image, row * width, rows[row]);
    }
    for (int row = 0; row < height; row++) {
      alongColumns(row);
      System.arraycopy(sum, 0, image, row * width, width);
    }
  }

  private void alongRow(float[] image, int start, float[] into) {
    int inside = width - 2 * radius;
    if (inside > 0) {
      Arrays.fill(sum, 0, inside, 0);
      for (int k = 0; k < kernel.length; k++) {
        System.arraycopy(image, start + k, from, 0, inside);
        add(sum, from, kernel[k], inside);
      }
      System.arraycopy(sum, 0, into, radius, inside);
    }
    for (int x = 0; x < radius; x++) {
      into[x] = atBorder(image, start, x);
    }
    for (int x = Math.max(radius, width - radius); x < width; x++) {
      into[x] = atBorder(image, start, x);
    }
  }

  private float atBorder(float[] image, int start, int x) {
    float value = 0;
    float weights = 0;
    for (int i = Math.max(-radius, -x); i <= Math.min(radius, width - 1 - x); i++) {
      value += kernel[i + radius] * image[start + x + i];
      weights += kernel[i + radius];
    }
    return value / weights;
  }

  private void alongColumns(int row) {
    int first = Math.max(-radius, -row);
    int last = Math.min(radius, height - 1 - row);
    float weights = 0;
    Arrays.fill(sum, 0);
    for (int i = first; i <= last; i++) {
      add(sum, rows[row + i], kernel[i + radius], width);
      weights += kernel[i + radius];
    }
    if (last - first < 2 * radius) {
      divide(sum, weights, width);
    }
  }

  private static void add(float[] sum, float[] values, float weight, int n) {
    for (int x = 0; x < n; x++) {
      sum[x] += weight * values[x];
    }
  }

  private static void divide(float[] sum, float weights, int n) {
    for (int x = 0; x < n; x++) {
      sum[x] /= weights;
    }
  }
}
