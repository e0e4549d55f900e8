package railglow.thermal;

import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.TDistribution;

/** Student's t turned into the standard normal score of the same upper tail. Stateless. */
final class NormalScore {
  private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);
  static final double KNOWN = 1e6;
  private static final double SMALLEST_TAIL = 1e-290;

  private NormalScore() {}

  /** Upper tail of the standard normal. */
  static double upperTail(double z) {
    return NORMAL.survivalProbability(z);
  }

  /** The z that has this upper tail. */
  static double ofUpperTail(double p) {
    return NORMAL.inverseSurvivalProbability(p);
  }

  /**
   * The score of t with so many degrees of freedom.
   *
   * <p>Far out, where the tail is no double any more, by Wallace's approximation (Ann. Math. Stat.
   * 30, 1959, p. 1121). NaN for NaN; 0 degrees of freedom give 0, for then t says nothing.
   */
  static double ofT(double t, double degreesOfFreedom) {
    if (degreesOfFreedom <= 0) {
      return Double.isNaN(t) ? Double.NaN : 0;
    }
    if (degreesOfFreedom >= KNOWN || t == 0 || Double.isNaN(t)) {
      return t;
    }
    if (t < 0) {
      return -ofT(-t, degreesOfFreedom);
    }
    double tail = TDistribution.of(degreesOfFreedom).survivalProbability(t);
    return tail > SMALLEST_TAIL ? ofUpperTail(tail) : wallace(t, degreesOfFreedom);
  }

  /** The t with so many degrees of freedom that has the score z. */
  static double toT(double z, double degreesOfFreedom) {
    if (degreesOfFreedom <= 0) {
      return Double.POSITIVE_INFINITY;
    }
    if (degreesOfFreedom >= KNOWN) {
      return z;
    }
    double tail = upperTail(Math.abs(z));
    double t =
        tail > SMALLEST_TAIL
            ? TDistribution.of(degreesOfFreedom).inverseSurvivalProbability(tail)
            : aboutT(Math.abs(z), degreesOfFreedom);
    return z < 0 ? -t : t;
  }

  /** Wallace's approximation of {@link #toT} for z at or above 0. */
  static double aboutT(double z, double nu) {
    double w = z * (8 * nu + 3) / (8 * nu + 1);
    return Math.sqrt(nu * Math.expm1(w * w / nu));
  }

  private static double wallace(double t, double nu) {
    return (8 * nu + 1) / (8 * nu + 3) * Math.sqrt(nu * Math.log1p(t * t / nu));
  }

  /** A table of scores for many values of one t distribution. Immutable. */
  static final class Table {
    private static final Remembered<Double, Table> MADE = new Remembered<>(32, Table::new);
    private static final int STEPS = 100;
    private static final double TOP = 40;

    /**
     * Steps of t in the close table, and its reach: where nearly all pixels without a source are.
     */
    private static final int CLOSE_STEPS = 256;

    private static final int CLOSE_TOP = 8;
    private final double nu;
    private final float[] scores;
    private final float[] close;

    /** The last few are remembered. */
    static Table of(double degreesOfFreedom) {
      return MADE.of(degreesOfFreedom);
    }

    private Table(double degreesOfFreedom) {
      nu = degreesOfFreedom;
      scores = nu >= KNOWN ? null : new float[STEPS + 2];
      // the argument is Wallace's score, so that the table is nearly a straight line
      for (int i = 0; scores != null && i < scores.length; i++) {
        double wallace = i * TOP / STEPS;
        double t = aboutT(wallace, nu);
        scores[i] = (float) (Double.isInfinite(t) ? wallace : ofT(t, nu));
      }
      close = new float[CLOSE_STEPS * CLOSE_TOP + 2];
      for (int i = 0; i < close.length; i++) {
        close[i] = score(i / (double) CLOSE_STEPS);
      }
    }

    /** {@link #score} within 2e-5 for t at or above 0, without a logarithm for each. */
    float near(float t) {
      float at = t * CLOSE_STEPS;
      if (!(at < CLOSE_STEPS * CLOSE_TOP)) {
        return score(t);
      }
      int i = (int) at;
      return close[i] + (at - i) * (close[i + 1] - close[i]);
    }

    /** The t of a score, about. */
    double inverse(double score) {
      return scores == null ? score : Math.copySign(aboutT(Math.abs(score), nu), score);
    }

    float score(double t) {
      if (scores == null || !(nu > 0)) {
        return nu > 0 ? (float) t : 0;
      }
      double at = Math.abs(wallace(t, nu)) * STEPS / TOP;
      float score;
      if (at >= STEPS) {
        score = (float) (at * TOP / STEPS);
      } else {
        int i = (int) at;
        score = scores[i] + (float) (at - i) * (scores[i + 1] - scores[i]);
      }
      return t < 0 ? -score : score;
    }
  }
}
