package railglow.thermal.inverse;

/**
 * The same least squares with the map held at zero or above inside the window and at zero outside,
 * by alternating between the unconstrained solution (mode by mode) and the constraint (pixel by
 * pixel): the alternating direction method of multipliers (Boyd and others, Foundations and Trends
 * in Machine Learning 3, 2011, section 5). Pure.
 */
final class HeldPositive {
  private static final int MOST_STEPS = 120;
  private static final double SETTLED = 2e-3;

  private HeldPositive() {}

  /** The map over the padded picture, row by row. */
  static double[] of(Modes modes, Window window, double strength) {
    Spectrum spectrum = modes.spectrum();
    int n = spectrum.size();
    double pull = typical(modes, strength);
    double[] map = new double[n];
    double[] doubt = new double[n];
    for (int step = 0; step < MOST_STEPS; step++) {
      double[][] free = {new double[n], new double[n]};
      for (int i = 0; i < n; i++) {
        free[0][i] = pull * (map[i] - doubt[i]);
      }
      spectrum.forward(free);
      for (int k = 0; k < n; k++) {
        double whole = modes.whole(k, strength) + pull;
        free[0][k] = (free[0][k] + modes.dataRe(k)) / whole;
        free[1][k] = (free[1][k] + modes.dataIm(k)) / whole;
      }
      spectrum.inverse(free);
      double changed = 0;
      double size = 0;
      for (int i = 0; i < n; i++) {
        double wanted = free[0][i] + doubt[i];
        boolean inside =
            i % spectrum.columns() < window.width() && i / spectrum.columns() < window.height();
        double held = inside ? Math.max(0, wanted) : 0;
        changed += (held - map[i]) * (held - map[i]);
        size += held * held;
        doubt[i] = wanted - held;
        map[i] = held;
      }
      if (changed <= SETTLED * SETTLED * size) {
        break;
      }
    }
    return map;
  }

  /** Geometric mean of what the modes weigh: neither side of the alternation dominates. */
  private static double typical(Modes modes, double strength) {
    double sum = 0;
    int n = modes.spectrum().size();
    for (int k = 0; k < n; k++) {
      sum += Math.log(modes.whole(k, strength));
    }
    return Math.exp(sum / n);
  }
}
