package railglow.thermal;

/**
 * A round Gaussian in both channels: what a found source adds to the mean planes.
 *
 * @param inPhase amplitude, kelvin
 * @param quadrature amplitude, kelvin
 */
record Blob(double column, double row, double sigma, double inPhase, double quadrature) {
  /** Its shape at a pixel, 1 at the centre. */
  double shape(double x, double y) {
    double dx = x - column;
    double dy = y - row;
    double exponent = (dx * dx + dy * dy) / (2 * sigma * sigma);
    return exponent > 40 ? 0 : Math.exp(-exponent);
  }

  /** The pixels to which it adds anything. */
  Area area(int width, int height) {
    int reach = (int) Math.ceil(6 * sigma);
    return new Area(
        Math.max(0, (int) column - reach),
        Math.max(0, (int) row - reach),
        Math.min(width, (int) column + reach + 1),
        Math.min(height, (int) row + reach + 1));
  }

  /**
   * Its shape along an axis of n pixels, 0 outside of some: the shape is the product of the
   * profiles.
   */
  double[] profile(double centre, int from, int to, int n) {
    double[] profile = new double[n];
    for (int at = from; at < to; at++) {
      double d = (at - centre) / sigma;
      profile[at] = Math.exp(-0.5 * d * d);
    }
    return profile;
  }

  /**
   * What a filter of a width makes of it at a pixel inside the picture, per kelvin of amplitude.
   */
  double filtered(double x, double y, double filterSigma) {
    double both = sigma * sigma + filterSigma * filterSigma;
    double dx = x - column;
    double dy = y - row;
    return 2
        * Math.sqrt(Math.PI)
        * sigma
        * sigma
        * filterSigma
        / both
        * Math.exp(-(dx * dx + dy * dy) / (2 * both));
  }
}
