package railglow.thermal.inverse;

/**
 * The unconstrained solution: linear in the data, so its noise and its sharpness are known. Not
 * thread-safe.
 */
final class FreeMap {
  private final Modes modes;
  private final double strength;
  private final double[] map;
  private final double noise;
  private final double resolutionPixels;

  private FreeMap(
      Modes modes, double strength, double[] map, double noise, double resolutionPixels) {
    this.modes = modes;
    this.strength = strength;
    this.map = map;
    this.noise = noise;
    this.resolutionPixels = resolutionPixels;
  }

  static FreeMap of(Modes modes, double strength) {
    Spectrum spectrum = modes.spectrum();
    int n = spectrum.size();
    double[][] map = {new double[n], new double[n]};
    double[][] point = {new double[n], new double[n]};
    double variance = 0;
    for (int k = 0; k < n; k++) {
      double whole = modes.whole(k, strength);
      map[0][k] = modes.dataRe(k) / whole;
      map[1][k] = modes.dataIm(k) / whole;
      point[0][k] = modes.gain(k) / whole;
      variance += modes.gain(k) / (whole * whole);
    }
    spectrum.inverse(map);
    spectrum.inverse(point);
    return new FreeMap(
        modes, strength, map[0], Math.sqrt(variance / n), widthAtHalf(point[0], spectrum));
  }

  /** Full width at half height along a row. */
  private static double widthAtHalf(double[] point, Spectrum spectrum) {
    double half = point[0] / 2;
    int last = spectrum.columns() / 2;
    for (int x = 1; x < last; x++) {
      if (point[x] < half) {
        return 2 * (x - 1 + (point[x - 1] - half) / (point[x - 1] - point[x]));
      }
    }
    return 2.0 * last;
  }

  /** Standard deviation of a pixel. */
  double noise() {
    return noise;
  }

  double resolutionPixels() {
    return resolutionPixels;
  }

  double sum(boolean[] aperture) {
    double sum = 0;
    for (int i = 0; i < map.length; i++) {
      sum += aperture[i] ? map[i] : 0;
    }
    return sum;
  }

  /** Standard deviation of the sum over some pixels, their correlation included. */
  double sigmaOfSum(boolean[] aperture) {
    Spectrum spectrum = modes.spectrum();
    int n = spectrum.size();
    double[][] shape = {new double[n], new double[n]};
    for (int i = 0; i < n; i++) {
      shape[0][i] = aperture[i] ? 1 : 0;
    }
    spectrum.forward(shape);
    double variance = 0;
    for (int k = 0; k < n; k++) {
      double whole = modes.whole(k, strength);
      double size = shape[0][k] * shape[0][k] + shape[1][k] * shape[1][k];
      variance += size * modes.gain(k) / (whole * whole);
    }
    return Math.sqrt(variance / n);
  }
}
