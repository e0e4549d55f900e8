package railglow.thermal;

/** A round Gaussian in the middle of a pixel, at the pixels around it: a table. Immutable. */
final class PixelShape {
  private final double sigma;
  private final int reach;
  private final double[] quadrant;

  /**
   * @param sigma pixels
   * @param reach pixels to either side
   */
  PixelShape(double sigma, int reach) {
    this.sigma = sigma;
    this.reach = reach;
    quadrant = new double[(reach + 1) * (reach + 1)];
    for (int dy = 0, k = 0; dy <= reach; dy++) {
      for (int dx = 0; dx <= reach; dx++, k++) {
        quadrant[k] = GaussianFit.shape(dx, dy, sigma);
      }
    }
  }

  double sigma() {
    return sigma;
  }

  /** So many pixels from the middle, either way. */
  double at(int dx, int dy) {
    return quadrant[Math.abs(dy) * (reach + 1) + Math.abs(dx)];
  }
}
