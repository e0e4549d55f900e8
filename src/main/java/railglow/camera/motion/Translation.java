package railglow.camera.motion;

/**
 * Moves an image by fractions of a pixel: cubic convolution along rows, then along columns; beyond
 * the border the border's own pixels stand. Allocates nothing per image. Not thread-safe.
 */
final class Translation {
  private final int width;
  private final int height;
  private final float[] scratch;
  private final float[] weights = new float[4];

  Translation(int width, int height) {
    this.width = width;
    this.height = height;
    this.scratch = new float[width * height];
  }

  /** {@code into(x, y) = from(x + dx, y + dy)}; the arrays may be the same. */
  void apply(float[] from, double dx, double dy, float[] into) {
    int whole = (int) Math.floor(dx);
    CubicWeights.of(dx - whole, weights);
    for (int row = 0; row < height; row++) {
      alongRow(from, row * width, whole);
    }
    whole = (int) Math.floor(dy);
    CubicWeights.of(dy - whole, weights);
    for (int row = 0; row < height; row++) {
      int a = clamp(row + whole - 1, height) * width;
      int b = clamp(row + whole, height) * width;
      int c = clamp(row + whole + 1, height) * width;
      int d = clamp(row + whole + 2, height) * width;
      int to = row * width;
      for (int x = 0; x < width; x++) {
        into[to + x] =
            weights[0] * scratch[a + x]
                + weights[1] * scratch[b + x]
                + weights[2] * scratch[c + x]
                + weights[3] * scratch[d + x];
      }
    }
  }

  private void alongRow(float[] from, int start, int whole) {
    int first = Math.max(0, 1 - whole);
    int last = Math.min(width, width - 2 - whole);
    for (int x = 0; x < Math.min(first, width); x++) {
      scratch[start + x] = atBorder(from, start, x + whole);
    }
    for (int x = first; x < last; x++) {
      int at = start + x + whole;
      scratch[start + x] =
          weights[0] * from[at - 1]
              + weights[1] * from[at]
              + weights[2] * from[at + 1]
              + weights[3] * from[at + 2];
    }
    for (int x = Math.max(last, Math.min(first, width)); x < width; x++) {
      scratch[start + x] = atBorder(from, start, x + whole);
    }
  }

  private float atBorder(float[] from, int start, int place) {
    float sum = 0;
    for (int k = 0; k < 4; k++) {
      sum += weights[k] * from[start + clamp(place + k - 1, width)];
    }
    return sum;
  }

  private static int clamp(int place, int size) {
    return Math.max(0, Math.min(size - 1, place));
  }
}
