package railglow.thermal;

/**
 * Bounds for repeated looks at one accumulating mean, by alpha spending with exact recursive
 * integration (Armitage, McPherson, Rowe, JRSS A 132, 1969, p. 235; Lan and DeMets, Biometrika 70,
 * 1983, p. 659). One-sided. Every cycle from the first lawful one to the cap is a look.
 *
 * <p>Spending function: {@value #LATE_SHARE} of the error as O'Brien and Fleming would spend it,
 * which keeps the last bound close to that of a single look, and the rest evenly over the logarithm
 * of the cycle number, so that a strong source is called early. Immutable.
 */
final class LookBounds {
  /** Share of the error spent late. */
  static final double LATE_SHARE = 0.5;

  private final int first;
  private final double[] bounds;
  private final double[] spent;

  private LookBounds(int first, double[] bounds, double[] spent) {
    this.first = first;
    this.bounds = bounds;
    this.spent = spent;
  }

  /** Bounds that are known as scores; what they spend is not. */
  static LookBounds given(int firstCycle, double[] scores) {
    return new LookBounds(firstCycle, scores.clone(), new double[scores.length]);
  }

  /** Bounds that spend an error of alpha in all. */
  static LookBounds of(int firstCycle, int lastCycle, double alpha) {
    return of(firstCycle, lastCycle, alpha, LATE_SHARE);
  }

  /** With another share spent late; 1 is pure O'Brien-Fleming spending. */
  static LookBounds of(int firstCycle, int lastCycle, double alpha, double lateShare) {
    int looks = lastCycle - firstCycle + 1;
    double[] cumulative = new double[looks];
    double zHalf = NormalScore.ofUpperTail(alpha / 2);
    for (int j = 0; j < looks; j++) {
      double t = (firstCycle + j) / (double) lastCycle;
      double late = 2 * NormalScore.upperTail(zHalf / Math.sqrt(t));
      // the first look gets the share of one e-fold besides, lest it have none
      double even =
          j == looks - 1
              ? alpha
              : alpha
                  * (1 + Math.log((firstCycle + j) / (double) firstCycle))
                  / (1 + Math.log(lastCycle / (double) firstCycle));
      cumulative[j] = j == looks - 1 ? alpha : lateShare * late + (1 - lateShare) * even;
    }
    double[] times = new double[looks];
    for (int j = 0; j < looks; j++) {
      times[j] = firstCycle + j;
    }
    return new LookBounds(firstCycle, boundsFor(times, cumulative), cumulative);
  }

  /**
   * The bounds, as normal scores, that spend given cumulative errors at given information times.
   *
   * @param times ascending, in any unit
   * @param cumulative ascending, positive
   */
  static double[] boundsFor(double[] times, double[] cumulative) {
    double[] bounds = new double[times.length];
    CrossingRecursion recursion = new CrossingRecursion();
    double before = 0;
    for (int j = 0; j < times.length; j++) {
      bounds[j] = recursion.boundSpending(times[j], cumulative[j] - before);
      before = cumulative[j];
    }
    return bounds;
  }

  /** The bound at a cycle count, as a normal score; infinite where no look is lawful. */
  double at(int cycles) {
    int j = cycles - first;
    return j < 0 || j >= bounds.length ? Double.POSITIVE_INFINITY : bounds[j];
  }

  /** Error spent at that very look. */
  double spentAt(int cycles) {
    int j = cycles - first;
    return j < 0 || j >= spent.length ? 0 : spent[j] - (j == 0 ? 0 : spent[j - 1]);
  }

  /**
   * For each look the probability that the mean crosses there first when the score grows by drift x
   * root of the cycles.
   */
  double[] crossingProbabilities(double drift) {
    double[] probabilities = new double[bounds.length];
    CrossingRecursion recursion = new CrossingRecursion();
    for (int j = 0; j < bounds.length; j++) {
      double time = first + j;
      double level = bounds[j] * Math.sqrt(time);
      probabilities[j] = recursion.crossingWithDrift(time, level, drift);
      recursion.advance(time, level);
    }
    return probabilities;
  }
}
