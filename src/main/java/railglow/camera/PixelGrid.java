package railglow.camera;

import railglow.thermal.Samples;

/**
 * A fixed, even choice of pixels that stands for the whole image: all of a small one, about two
 * thousand of a large one, never in straight columns. Immutable.
 */
final class PixelGrid {
  private static final int ENOUGH = 2048;
  private final int[] indices;

  PixelGrid(int width, int height) {
    int pixels = width * height;
    int stride = Math.max(1, pixels / ENOUGH);
    while (stride > 1 && gcd(stride, width) != 1) {
      stride++;
    }
    indices = new int[(pixels + stride - 1) / stride];
    for (int i = 0; i < indices.length; i++) {
      indices[i] = i * stride;
    }
  }

  int size() {
    return indices.length;
  }

  void read(Samples image, float[] into) {
    for (int i = 0; i < indices.length; i++) {
      into[i] = (float) image.valueAt(indices[i]);
    }
  }

  private static int gcd(int a, int b) {
    return b == 0 ? a : gcd(b, a % b);
  }
}
