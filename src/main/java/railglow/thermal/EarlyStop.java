package railglow.thermal;

/**
 * The bias of a mean that is reported because it has just crossed a bound, and its correction: the
 * median unbiased estimate in the order of stages (Siegmund, Biometrika 65, 1978, p. 341; Emerson
 * and Fleming, Biometrika 77, 1990, p. 875), and the interval in the same order. Stopping earlier,
 * or at the same look with a higher score, counts as more extreme. Immutable.
 *
 * @param share of a score that remains when the median unbiased drift is put in the place of the
 *     observed one; 1 when no earlier look could have stopped the run
 * @param below how many of its standard errors the 95 % interval reaches below that
 * @param above likewise above
 */
record EarlyStop(double share, double below, double above) {
  private static final double TAIL = 0.025;
  static final double HALF_95 = 1.959963984540054;

  /** Of a run that was not stopped by what it shows. */
  static final EarlyStop NONE = new EarlyStop(1, HALF_95, HALF_95);

  private static final int GRID = 64;

  /**
   * The interval's ends are looked for from so many standard errors below the score to above it.
   */
  private static final double FAR_BELOW = 8;

  private static final double FAR_ABOVE = 3.5;

  /**
   * @param bounds score asked for at each cycle count (index), infinite where nobody looked
   * @param cycles count at which the run stopped
   * @param score reached there
   */
  static EarlyStop of(double[] bounds, int cycles, double score) {
    double root = Math.sqrt(cycles);
    double from = Math.max(0, score - FAR_BELOW) / root;
    double to = (score + FAR_ABOVE) / root;
    double[] drifts = new double[GRID];
    double[] extreme = new double[GRID];
    for (int g = 0; g < GRID; g++) {
      drifts[g] = from + (to - from) * g / (GRID - 1);
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
    double median = root * driftAt(0.5, drifts, extreme);
    double share = Math.min(1, median / score);
    return new EarlyStop(
        share,
        Math.max(0, share * score - root * driftAt(TAIL, drifts, extreme)),
        Math.max(0, root * driftAt(1 - TAIL, drifts, extreme) - share * score));
  }

  /** The drift under which something as extreme has this probability. */
  private static double driftAt(double probability, double[] drifts, double[] extreme) {
    for (int g = 0; g < drifts.length; g++) {
      if (extreme[g] >= probability) {
        return g == 0
            ? drifts[0]
            : drifts[g - 1]
                + (drifts[g] - drifts[g - 1])
                    * (probability - extreme[g - 1])
                    / (extreme[g] - extreme[g - 1]);
      }
    }
    return drifts[drifts.length - 1];
  }
}
