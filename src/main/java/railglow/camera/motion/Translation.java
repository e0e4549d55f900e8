package railglow.camera.motion;

import java.util.Arrays;

/**
 * Moves an image by fractions of a pixel: cubic convolution along rows, then along columns; beyond
 * the border the border's own pixels stand. Allocates nothing per image. Rows are arrays of their
 * own, so that the compiler makes vector code (decision 0090). Not thread-safe.
 */
final class Translation {
  private final int width;
  private final int height;
  private final float[][] rows;
  private final float[][] shifted;
  private final float[] line;
  private final float[] weights = new float[4];

  Translation(int width, int height) {
    this.width = width;
    this.height = height;
    this.rows = new float[height][width];
    this.shifted = new float[4][width];
    this.line = new float[width];
  }

  /** {@code into(x, y) = from(x + dx, y + dy)}; the arrays may be the same. */
  void apply(float[] from, double dx, double dy, float[] into) {
    int whole = (int) Math.floor(dx);
    CubicWeights.of(dx - whole, weights);
    for (int row = 0; row < height; row++) {
      for (int k = 0; k < 4; k++) {
        copyShifted(from, row * width, whole + k - 1, shifted[k]);
      }
      weigh(shifted[0], shifted[1], shifted[2], shifted[3], rows[row]);
    }
    whole = (int) Math.floor(dy);
    CubicWeights.of(dy - whole, weights);
    for (int row = 0; row < height; row++) {
      weigh(
          rows[clamp(row + whole - 1, height)],
          rows[clamp(row + whole, height)],
          rows[clamp(row + whole + 1, height)],
          rows[clamp(row + whole + 2, height)],
          line);
      System.arraycopy(line, 0, into, row * width, width);
    }
  }

  /** A row from so many pixels further right on, its ends going on with their last pixel. */
  private void copyShifted(float[] from, int start, int shift, float[] into) {
    int first = Math.max(0, Math.min(width, -shift));
    int last = Math.max(first, Math.min(width, width - shift));
    Arrays.fill(into, 0, first, from[start]);
    if (last > first) {
      System.arraycopy(from, start + first + shift, into, first, last - first);
    }
    Arrays.fill(into, last, width, from[start + width - 1]);
  }

  private void weigh(float[] a, float[] b, float[] c, float[] d, float[] into) {
    float wa = weights[0];
    float wb = weights[1];
    float wc = weights[2];
    float wd = weights[3];
    for (int x = 0; x < width; x++) {
      into[x] = wa * a[x] + wb * b[x] + wc * c[x] + wd * d[x];
    }
  }

  private static int clamp(int place, int size) {
    return Math.max(0, Math.min(size - 1, place));
  }
}
