package railglow.camera.motion;

import java.util.Random;

/**
 * A board-like scene of warm rectangles on a finer grid, seen through optics and pixels at any
 * shift: each pixel is the mean over its area, so sampling is as a sensor does it. In kelvin.
 */
final class SceneThroughOptics {
  private static final int FINE = 8;
  private static final int BORDER = 10;
  private final int width;
  private final int height;
  private final int fineWidth;
  private final int fineHeight;
  private final double[] integral;

  /**
   * @param contrastKelvin spread of the parts' temperatures
   */
  SceneThroughOptics(int width, int height, double contrastKelvin, long seed) {
    this.width = width;
    this.height = height;
    this.fineWidth = (width + 2 * BORDER) * FINE;
    this.fineHeight = (height + 2 * BORDER) * FINE;
    Random random = new Random(seed);
    float[] scene = new float[fineWidth * fineHeight];
    for (int part = 0; part < width * height / 250; part++) {
      float kelvin = (float) (contrastKelvin * random.nextGaussian());
      int w = FINE * (2 + random.nextInt(18)) + random.nextInt(FINE);
      int h = FINE * (2 + random.nextInt(12)) + random.nextInt(FINE);
      int left = random.nextInt(fineWidth - w);
      int top = random.nextInt(fineHeight - h);
      for (int y = top; y < top + h; y++) {
        java.util.Arrays.fill(scene, y * fineWidth + left, y * fineWidth + left + w, kelvin);
      }
    }
    // Optics: a blur of 0.7 pixels, about what such lenses have.
    float[][] blurred = new float[fineHeight][fineWidth];
    new Smoothing(fineWidth, fineHeight, 0.7 * FINE).apply(scene, blurred);
    integral = new double[(fineWidth + 1) * (fineHeight + 1)];
    for (int y = 0; y < fineHeight; y++) {
      double row = 0;
      for (int x = 0; x < fineWidth; x++) {
        row += blurred[y][x];
        integral[(y + 1) * (fineWidth + 1) + x + 1] = integral[y * (fineWidth + 1) + x + 1] + row;
      }
    }
  }

  /** Rows one after the other. */
  static float[] flat(float[][] rows) {
    float[] flat = new float[rows.length * rows[0].length];
    for (int row = 0; row < rows.length; row++) {
      System.arraycopy(rows[row], 0, flat, row * rows[0].length, rows[0].length);
    }
    return flat;
  }

  /** The scene moved right and down by these pixels; shifts are honoured to 1/64 pixel. */
  float[] seen(double shiftX, double shiftY) {
    float[] image = new float[width * height];
    for (int row = 0; row < height; row++) {
      for (int column = 0; column < width; column++) {
        double left = (column + BORDER - shiftX) * FINE;
        double top = (row + BORDER - shiftY) * FINE;
        double sum =
            at(left + FINE, top + FINE)
                - at(left, top + FINE)
                - at(left + FINE, top)
                + at(left, top);
        image[row * width + column] = (float) (sum / (FINE * FINE));
      }
    }
    return image;
  }

  /** The integral between its grid points by straight lines: exact for blocks of even value. */
  private double at(double x, double y) {
    int x0 = (int) Math.floor(x);
    int y0 = (int) Math.floor(y);
    double fx = x - x0;
    double fy = y - y0;
    int i = y0 * (fineWidth + 1) + x0;
    double upper = integral[i] * (1 - fx) + integral[i + 1] * fx;
    int j = i + fineWidth + 1;
    double lower = integral[j] * (1 - fx) + integral[j + 1] * fx;
    return upper * (1 - fy) + lower * fy;
  }

  static void addNoise(float[] image, double kelvin, Random random) {
    for (int i = 0; i < image.length; i++) {
      image[i] += (float) (kelvin * random.nextGaussian());
    }
  }
}
