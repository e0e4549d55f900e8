package railglow.thermal.inverse;

/**
 * The data summed over the modes of one wave number: those mirrored in x and y, which every model
 * treats alike. Made once per window; makes the search for the best model cheap. Arrays are not
 * handed out for change.
 */
final class ModePowers {
  private final double[] roughness;
  private final int[] count;
  private final double[] squaresI;
  private final double[] squaresC;
  private final double[] products;
  private final int[] groupOf;
  private final int pixels;

  private ModePowers(int groups, int modes, int pixels) {
    roughness = new double[groups];
    count = new int[groups];
    squaresI = new double[groups];
    squaresC = new double[groups];
    products = new double[groups];
    groupOf = new int[modes];
    this.pixels = pixels;
  }

  static ModePowers of(ChannelSpectra data) {
    Spectrum spectrum = data.spectrum();
    int columns = spectrum.columns();
    int rows = spectrum.rows();
    int across = columns / 2 + 1;
    ModePowers powers =
        new ModePowers(across * (rows / 2 + 1), spectrum.size(), data.window().pixels());
    double[][] i = data.inPhase();
    double[][] c = data.quadrature();
    for (int k = 0; k < spectrum.size(); k++) {
      int x = Math.min(k % columns, columns - k % columns);
      int y = Math.min(k / columns, rows - k / columns);
      int group = y * across + x;
      powers.groupOf[k] = group;
      powers.roughness[group] = spectrum.waveNumberSquared(k);
      powers.count[group]++;
      powers.squaresI[group] += i[0][k] * i[0][k] + i[1][k] * i[1][k];
      powers.squaresC[group] += c[0][k] * c[0][k] + c[1][k] * c[1][k];
      powers.products[group] += i[0][k] * c[0][k] + i[1][k] * c[1][k];
    }
    return powers;
  }

  int groups() {
    return count.length;
  }

  int groupOf(int mode) {
    return groupOf[mode];
  }

  /** How many modes a group has. */
  int count(int group) {
    return count[group];
  }

  /** Squared wave number, rad^2 per pixel^2. */
  double roughness(int group) {
    return roughness[group];
  }

  /** Sum over a group of |a I + b C|^2. */
  double power(int group, double a, double b) {
    return a * a * squaresI[group] + b * b * squaresC[group] + 2 * a * b * products[group];
  }

  /** How many modes there are. */
  int modes() {
    return groupOf.length;
  }

  /** How many pixels hold data. */
  int pixels() {
    return pixels;
  }
}
