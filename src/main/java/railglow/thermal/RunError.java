package railglow.thermal;

/**
 * Turns normal scores into family-wise probabilities over a whole run: pixels, widths, directions
 * and looks together. Bounds at a ladder of per-test errors are made once; between rungs the bound
 * is interpolated in the square root of the log error, in which it is nearly a straight line.
 * Immutable, hence thread-safe.
 */
final class RunError {
  private static final int RUNGS = 8;
  private final int first;
  private final int last;
  private final double[] errors = new double[RUNGS];
  private final LookBounds[] ladder = new LookBounds[RUNGS];

  private static final Remembered<Long, RunError> MADE =
      new Remembered<>(8, key -> new RunError((int) (key >> 32), (int) (long) key));

  /**
   * Of looks after every cycle from the first lawful one to the cap; the last few are remembered.
   */
  static RunError of(int firstCycle, int lastCycle) {
    return MADE.of(((long) firstCycle << 32) | lastCycle);
  }

  private RunError(int firstCycle, int lastCycle) {
    first = firstCycle;
    last = lastCycle;
    for (int r = 0; r < RUNGS; r++) {
      errors[r] = Math.pow(10, -1 - 2 * r);
      ladder[r] = LookBounds.of(first, last, errors[r]);
    }
  }

  boolean isLook(int cycles) {
    return cycles >= first && cycles <= last;
  }

  /** The bounds of a whole run that spend a family-wise error with one family at all looks. */
  LookBounds boundsFor(FieldFamily family, double familyWiseError) {
    double[] scores = new double[last - first + 1];
    for (int k = first; k <= last; k++) {
      scores[k - first] = scale(k, family).bound(familyWiseError);
    }
    return LookBounds.given(first, scores);
  }

  /** The ladder joined with a family: what a score is worth at one look. */
  Scale scale(int cycles, FieldFamily family) {
    return new Scale(cycles, family);
  }

  /** Family-wise probabilities at one look. Immutable. */
  final class Scale {
    private static final double LOWEST = 2;
    private static final double STEP = 0.2;
    private static final int STEPS = 60;
    private final double[] bounds = new double[RUNGS];
    private final double[] logFamily = new double[RUNGS];

    private Scale(int cycles, FieldFamily family) {
      double[] logTests = new double[STEPS + 1];
      for (int i = 0; i <= STEPS; i++) {
        double z = LOWEST + i * STEP;
        logTests[i] = Math.log(family.expectedPeaks(z) / NormalScore.upperTail(z));
      }
      for (int r = 0; r < RUNGS; r++) {
        bounds[r] = ladder[r].at(cycles);
        double sum = 0;
        for (int k = first; k <= last; k++) {
          sum += ladder[r].spentAt(k) * Math.exp(interpolate(logTests, ladder[r].at(k)));
        }
        logFamily[r] = Math.log(sum);
      }
    }

    private static double interpolate(double[] table, double z) {
      double at = Math.max(0, Math.min(STEPS - 1e-9, (z - LOWEST) / STEP));
      int i = (int) at;
      return table[i] + (at - i) * (table[i + 1] - table[i]);
    }

    /**
     * Smallest family-wise error at which a score would be called at this look; 1 where no look is
     * lawful.
     */
    double familyWiseP(double z) {
      if (Double.isInfinite(bounds[0]) || !(z > bounds[0])) {
        return 1;
      }
      int r = 0;
      while (r + 1 < RUNGS && z > bounds[r + 1]) {
        r++;
      }
      double log;
      if (r == RUNGS - 1) {
        double tail = Math.max(NormalScore.upperTail(z), Double.MIN_NORMAL);
        log = logFamily[r] + Math.log(tail / NormalScore.upperTail(bounds[r]));
      } else {
        double share = (z * z - square(bounds[r])) / (square(bounds[r + 1]) - square(bounds[r]));
        log = logFamily[r] + share * (logFamily[r + 1] - logFamily[r]);
      }
      return Math.min(1, Math.exp(log));
    }

    /** The score at which something is called at this look for a family-wise error. */
    double bound(double familyWiseError) {
      if (Double.isInfinite(bounds[0])) {
        return Double.POSITIVE_INFINITY;
      }
      double low = bounds[0];
      double high = 40;
      for (int i = 0; i < 60; i++) {
        double middle = (low + high) / 2;
        if (familyWiseP(middle) > familyWiseError) {
          low = middle;
        } else {
          high = middle;
        }
      }
      return (low + high) / 2;
    }

    private static double square(double x) {
      return x * x;
    }
  }
}
