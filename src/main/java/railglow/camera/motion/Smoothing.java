package railglow.camera.motion;

import railglow.thermal.SymmetricKernel;

/**
 * A separable Gaussian on a small image, with its weights renewed at the borders. Allocates nothing
 * per image. Not thread-safe.
 */
final class Smoothing {
  private final SymmetricKernel kernel;
  private final float[] taps;
  private final float[] acrossColumns;
  private final float[] acrossRows;
  private final SymmetricKernel.RowOfSums keep = this::keep;
  private float[][] into;

  Smoothing(int width, int height, double sigma) {
    int radius = Math.min((int) Math.ceil(3 * sigma), Math.min(width, height) - 1);
    this.kernel = new SymmetricKernel(width, height, radius);
    this.taps = new float[radius + 1];
    double total = 0;
    for (int i = -radius; i <= radius; i++) {
      total += Math.exp(-i * i / (2 * sigma * sigma));
    }
    for (int i = 0; i <= radius; i++) {
      taps[i] = (float) (Math.exp(-i * i / (2 * sigma * sigma)) / total);
    }
    this.acrossColumns = renewed(width);
    this.acrossRows = renewed(height);
  }

  /** By what a sum along a line must be multiplied at each of its places. */
  private float[] renewed(int size) {
    float[] factors = new float[size];
    for (int i = 0; i < size; i++) {
      float weights = 0;
      for (int k = 1 - taps.length; k < taps.length; k++) {
        weights += i + k < 0 || i + k >= size ? 0 : taps[Math.abs(k)];
      }
      factors[i] = 1 / weights;
    }
    return factors;
  }

  /** By how much white noise shrinks in variance, away from the borders. */
  double varianceFactor() {
    double squares = 0;
    for (int k = 1 - taps.length; k < taps.length; k++) {
      squares += taps[Math.abs(k)] * taps[Math.abs(k)];
    }
    return squares * squares;
  }

  /** Smooths an image into rows of their own. */
  void apply(float[] image, float[][] smoothed) {
    into = smoothed;
    kernel.sum(image, taps, keep);
  }

  /** What every pixel adds to a sum over the smoothed image that has these weights. */
  float[] spread(float[] weights) {
    int width = acrossColumns.length;
    float[] renewed = new float[weights.length];
    for (int i = 0; i < weights.length; i++) {
      renewed[i] = weights[i] * acrossRows[i / width] * acrossColumns[i % width];
    }
    float[] spread = new float[weights.length];
    kernel.sum(renewed, taps, (row, sums) -> System.arraycopy(sums, 0, spread, row * width, width));
    return spread;
  }

  private void keep(int row, float[] sums) {
    float[] line = into[row];
    multiply(sums, acrossRows[row], acrossColumns, line);
  }

  private static void multiply(float[] sums, float common, float[] factors, float[] into) {
    for (int x = 0; x < into.length; x++) {
      into[x] = sums[x] * common * factors[x];
    }
  }
}
