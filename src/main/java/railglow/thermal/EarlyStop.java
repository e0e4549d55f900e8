package railglow.thermal;

/**
 * The bias of a mean that is reported because it has just crossed a bound, and its correction: the
 * median unbiased estimate in the order of stages (Siegmund, Biometrika 65, 1978, p. 341; Emerson
 * and Fleming, Biometrika 77, 1990, p. 875). Stopping earlier, or at the same look with a higher
 * score, counts as more extreme. Stateless.
 */
final class EarlyStop {
  private static final int GRID = 48;

  private EarlyStop() {}

  /**
   * The share of a score that remains when the median unbiased drift is put in the place of the
   * observed one; 1 when no earlier look could have stopped the run.
   *
   * @param bounds score asked for at each cycle count (index), infinite where nobody looked
   * @param cycles count at which the run stopped
   * @param score reached there
   */
  static double share(double[] bounds, int cycles, double score) {
    double top = 1.1 * score / Math.sqrt(cycles);
    double[] drifts = new double[GRID];
    double[] extreme = new double[GRID];
    for (int g = 0; g < GRID; g++) {
      drifts[g] = top * (g + 1.0) / GRID;
    }
    CrossingRecursion recursion = null;
    for (int k = 1; k <= cycles; k++) {
      boolean last = k == cycles;
      if (last || !Double.isInfinite(bounds[k])) {
        double level = (last ? score : bounds[k]) * Math.sqrt(k);
        recursion = recursion == null ? new CrossingRecursion() : recursion;
        for (int g = 0; g < GRID; g++) {
          extreme[g] += recursion.crossingWithDrift(k, level, drifts[g]);
        }
        if (!last) {
          recursion.advance(k, level);
        }
      }
    }
    for (int g = 0; g < GRID; g++) {
      if (extreme[g] >= 0.5) {
        double below = g == 0 ? 0 : extreme[g - 1];
        double from = g == 0 ? 0 : drifts[g - 1];
        double drift = from + (drifts[g] - from) * (0.5 - below) / (extreme[g] - below);
        return Math.min(1, drift * Math.sqrt(cycles) / score);
      }
    }
    return 1;
  }
}
