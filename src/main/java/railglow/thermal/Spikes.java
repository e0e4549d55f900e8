package railglow.thermal;

import java.util.Arrays;

/**
 * Single pixels that stand far out of their neighbours within one cycle: flicker, not heat, for no
 * optics makes an image narrower than a pixel. Stateless.
 */
final class Spikes {
  private static final double FAR_SIGMAS = 6;
  private static final float NARROW = 4;

  private Spikes() {}

  /** Replaces each by the median of its neighbours, in place. Returns how many. */
  static int replace(float[] plane, int width, int height, double sigma) {
    float far = (float) (FAR_SIGMAS * sigma);
    int replaced = 0;
    float[] around = new float[8];
    for (int row = 0; row < height; row++) {
      for (int x = 0; x < width; x++) {
        int i = row * width + x;
        if (Math.abs(plane[i]) > far) {
          int n = 0;
          for (int dy = -1; dy <= 1; dy++) {
            for (int dx = -1; dx <= 1; dx++) {
              int c = x + dx;
              int r = row + dy;
              if ((dx != 0 || dy != 0) && c >= 0 && c < width && r >= 0 && r < height) {
                around[n++] = plane[r * width + c];
              }
            }
          }
          Arrays.sort(around, 0, n);
          float median = (around[(n - 1) / 2] + around[n / 2]) / 2;
          if (Math.abs(plane[i] - median) > far && Math.abs(plane[i]) > NARROW * Math.abs(median)) {
            plane[i] = median;
            replaced++;
          }
        }
      }
    }
    return replaced;
  }
}
