package railglow.camera.motion;

/**
 * The four weights of cubic convolution for a fraction of a pixel (R. Keys, "Cubic convolution
 * interpolation for digital image processing", IEEE Trans. ASSP 29, 1981, with a = -1/2).
 */
final class CubicWeights {
  private CubicWeights() {}

  /** For the pixels at -1, 0, 1, 2 of a place {@code fraction} beyond pixel 0. */
  static void of(double fraction, float[] into) {
    double t = fraction;
    into[0] = (float) (((-0.5 * t + 1) * t - 0.5) * t);
    into[1] = (float) ((1.5 * t - 2.5) * t * t + 1);
    into[2] = (float) (((-1.5 * t + 2) * t + 0.5) * t);
    into[3] = (float) ((0.5 * t - 0.5) * t * t);
  }
}
