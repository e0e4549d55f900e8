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
  private final int margin;
  private final float[][] rows;
  private final float[][] shifted;
  private final float[] weights = new float[4];

  /**
   * @param margin of the image that is not wanted
   */
  Translation(int width, int height, int margin) {
    this.width = width;
    this.height = height;
    this.margin = margin;
    int wanted = width - 2 * margin;
    this.rows = new float[height][wanted];
    this.shifted = new float[4][wanted];
  }

  /**
   * Gives what is wanted of {@code from(x + dx, y + dy)}.
   *
   * @param into as high and wide as the image without its margin
   */
  void apply(float[][] from, double dx, double dy, float[][] into) {
    int right = (int) Math.floor(dx);
    int down = (int) Math.floor(dy);
    CubicWeights.of(dx - right, weights);
    int last = clamp(height - margin + down + 1);
    for (int row = clamp(margin + down - 1); row <= last; row++) {
      for (int k = 0; k < 4; k++) {
        copyShifted(from[row], margin + right + k - 1, shifted[k]);
      }
      weigh(shifted[0], shifted[1], shifted[2], shifted[3], rows[row]);
    }
    CubicWeights.of(dy - down, weights);
    for (int row = 0; row < into.length; row++) {
      int first = margin + row + down - 1;
      weigh(
          rows[clamp(first)],
          rows[clamp(first + 1)],
          rows[clamp(first + 2)],
          rows[clamp(first + 3)],
          into[row]);
    }
  }

  /** A row from so many pixels further right on, its ends going on with their last pixel. */
  private void copyShifted(float[] from, int shift, float[] into) {
    int first = Math.max(0, Math.min(into.length, -shift));
    int last = Math.max(first, Math.min(into.length, width - shift));
    Arrays.fill(into, 0, first, from[0]);
    if (last > first) {
      System.arraycopy(from, first + shift, into, first, last - first);
    }
    Arrays.fill(into, last, into.length, from[width - 1]);
  }

  private void weigh(float[] a, float[] b, float[] c, float[] d, float[] into) {
    float wa = weights[0];
    float wb = weights[1];
    float wc = weights[2];
    float wd = weights[3];
    for (int x = 0; x < into.length; x++) {
      into[x] = wa * a[x] + wb * b[x] + wc * c[x] + wd * d[x];
    }
  }

  private int clamp(int row) {
    return Math.max(0, Math.min(height - 1, row));
  }
}
