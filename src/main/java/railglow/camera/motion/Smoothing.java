package railglow.camera.motion;

/**
 * A separable Gaussian on a small image, with its weights renewed at the borders. Allocates nothing
 * per image. Not thread-safe.
 */
final class Smoothing {
  private final int width;
  private final int height;
  private final int radius;
  private final float[] kernel;
  private final float[] scratch;

  Smoothing(int width, int height, double sigma) {
    this.width = width;
    this.height = height;
    this.radius = Math.min((int) Math.ceil(3 * sigma), Math.min(width, height) - 1);
    this.kernel = new float[2 * radius + 1];
    double sum = 0;
    for (int i = -radius; i <= radius; i++) {
      sum += Math.exp(-i * i / (2 * sigma * sigma));
    }
    for (int i = -radius; i <= radius; i++) {
      kernel[i + radius] = (float) (Math.exp(-i * i / (2 * sigma * sigma)) / sum);
    }
    this.scratch = new float[width * height];
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
      int start = row * width;
      for (int x = 0; x < width; x++) {
        scratch[start + x] =
            x >= radius && x < width - radius
                ? inside(image, start + x, 1)
                : atBorder(image, start + x, 1, x, width);
      }
    }
    for (int row = 0; row < height; row++) {
      boolean whole = row >= radius && row < height - radius;
      for (int x = 0; x < width; x++) {
        int at = row * width + x;
        image[at] = whole ? inside(scratch, at, width) : atBorder(scratch, at, width, row, height);
      }
    }
  }

  private float inside(float[] from, int at, int step) {
    float sum = 0;
    int index = at - radius * step;
    for (float weight : kernel) {
      sum += weight * from[index];
      index += step;
    }
    return sum;
  }

  private float atBorder(float[] from, int at, int step, int place, int size) {
    float sum = 0;
    float weights = 0;
    for (int i = -radius; i <= radius; i++) {
      if (place + i >= 0 && place + i < size) {
        sum += kernel[i + radius] * from[at + i * step];
        weights += kernel[i + radius];
      }
    }
    return sum / weights;
  }
}
