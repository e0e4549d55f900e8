package railglow.thermal;

/**
 * The density of a Brownian motion W(t) that has not yet crossed a bound seen at discrete times,
 * carried from look to look on a grid that ends at the last bound. Integrals by Gregory's rule
 * (Simpson-like end weights). Mutable, not thread-safe.
 */
final class CrossingRecursion {
  private static final double STEPS_PER_DEVIATION = 3;
  private static final double REACH = 7.5;
  private static final double LEAST = 1e-300;

  /** Farther from the level that is sought, in deviations, on which side it lies is certain. */
  private static final double SURE = 1e-6;

  /** Of the logarithm of a probability; its slope is of the order of 1 per deviation or more. */
  private static final double CLOSE = 1e-8;

  private static final double LOWEST_SCORE = 4;
  private static final double[] END_WEIGHTS = {3.0 / 8, 7.0 / 6, 23.0 / 24};
  private double time;
  private double bound;
  private double step;
  private double[] density;

  /**
   * Advances to a time and returns the normal score whose crossing there, for the first time, has
   * the given probability.
   */
  double boundSpending(double newTime, double probability) {
    double root = Math.sqrt(newTime);
    double score;
    if (density == null) {
      score = NormalScore.ofUpperTail(Math.max(probability, LEAST));
    } else {
      double deviation = Math.sqrt(newTime - time);
      double spent = Math.max(probability, LEAST);
      double near = near(spent, deviation);
      double low = bound - 12 * deviation;
      double high = Math.max(bound, 0) + 12 * deviation;
      for (int i = 0; i < 200 && high - low > 1e-9 * root; i++) {
        double middle = (low + high) / 2;
        double off = middle - near;
        if (Math.abs(off) > SURE * deviation ? off < 0 : crossing(middle, deviation) > spent) {
          low = middle;
        } else {
          high = middle;
        }
      }
      score = (low + high) / 2 / root;
    }
    advance(newTime, score * root);
    return score;
  }

  /**
   * The level whose crossing has a probability, much closer than {@value #SURE} deviations: by the
   * rule of false position on the logarithm, which the Illinois variant keeps from stalling
   * (Dowell, Jarratt, BIT 11, 1971, p. 168). NaN where it is not found.
   */
  private double near(double probability, double deviation) {
    double target = Math.log(probability);
    double low = bound - deviation;
    double high = bound + deviation;
    double atLow = Math.log(crossing(low, deviation)) - target;
    double atHigh = Math.log(crossing(high, deviation)) - target;
    if (!(atLow > 0 && atHigh < 0) || Double.isInfinite(atHigh)) {
      return Double.NaN;
    }
    int side = 0;
    for (int i = 0; i < 30; i++) {
      double level = (low * atHigh - high * atLow) / (atHigh - atLow);
      double at = Math.log(crossing(level, deviation)) - target;
      if (Math.abs(at) < CLOSE) {
        return level;
      }
      if (at > 0) {
        low = level;
        atLow = at;
        atHigh = side > 0 ? atHigh / 2 : atHigh;
        side = 1;
      } else {
        high = level;
        atHigh = at;
        atLow = side < 0 ? atLow / 2 : atLow;
        side = -1;
      }
    }
    return Double.NaN;
  }

  /** Probability to be above the level after so much more time, not having crossed before. */
  double crossing(double level, double deviation) {
    double sum = 0;
    for (int i = 0; i < density.length; i++) {
      double far = (level - (bound - i * step)) / deviation;
      if (far > 39) {
        break;
      }
      double part = weight(i) * density[i] * NormalScore.upperTail(far);
      sum += part;
      if (far > REACH && part < 1e-9 * sum) {
        break;
      }
    }
    return sum * step;
  }

  /**
   * Probability to be above the level at a later time, not having crossed before, when W has a
   * drift: the density under drift is the one without times exp(drift w - drift^2 t / 2).
   */
  double crossingWithDrift(double newTime, double level, double drift) {
    if (density == null) {
      double root = Math.sqrt(newTime);
      return NormalScore.upperTail((level - drift * newTime) / root);
    }
    double deviation = Math.sqrt(newTime - time);
    double ahead = drift * (newTime - time);
    double sum = 0;
    for (int i = 0; i < density.length; i++) {
      double w = bound - i * step;
      double far = (level - ahead - w) / deviation;
      if (far > 10) {
        break;
      }
      double tilt = Math.exp(drift * w - drift * drift * time / 2);
      sum += weight(i) * density[i] * tilt * NormalScore.upperTail(far);
    }
    return sum * step;
  }

  /** Moves the uncrossed density to a new time with a bound (in units of W) there. */
  void advance(double newTime, double newBound) {
    double deviation = density == null ? Math.sqrt(newTime) : Math.sqrt(newTime - time);
    double newStep = deviation / STEPS_PER_DEVIATION;
    int n = (int) Math.ceil((newBound + LOWEST_SCORE * Math.sqrt(newTime)) / newStep) + 1;
    double[] next = new double[Math.max(n, 8)];
    double norm = 1 / (deviation * Math.sqrt(2 * Math.PI));
    if (density == null) {
      for (int i = 0; i < next.length; i++) {
        double u = (newBound - i * newStep) / deviation;
        next[i] = norm * Math.exp(-u * u / 2);
      }
    } else {
      carry(next, newBound, newStep, deviation, norm);
    }
    density = next;
    bound = newBound;
    step = newStep;
    time = newTime;
  }

  private void carry(
      double[] next, double newBound, double newStep, double deviation, double norm) {
    int reach = (int) Math.ceil(REACH * deviation / step);
    if (Math.abs(newStep - step) < 1e-12 * step) {
      carryOnSameGrid(next, newBound, deviation, norm, reach);
      return;
    }
    for (int i = 0; i < next.length; i++) {
      double w = newBound - i * newStep;
      int centre = (int) Math.round((bound - w) / step);
      int from = Math.max(0, centre - reach);
      int to = Math.min(density.length - 1, centre + reach);
      double sum = 0;
      for (int j = from; j <= to; j++) {
        double u = (w - (bound - j * step)) / deviation;
        sum += weight(j) * density[j] * (norm * Math.exp(-u * u / 2) * step);
      }
      next[i] = sum;
    }
  }

  /** Tap by tap for all points at once, from arrays that count alike: vector code (0090). */
  private void carryOnSameGrid(
      double[] next, double newBound, double deviation, double norm, int reach) {
    int shift = (int) Math.round((bound - newBound) / step);
    int before = Math.max(0, reach - shift);
    int after = Math.max(density.length, next.length + shift + reach);
    double[] weighted = new double[before + after];
    for (int j = 0; j < density.length; j++) {
      weighted[before + j] = weight(j) * density[j];
    }
    double[] shifted = new double[next.length];
    for (int k = -reach; k <= reach; k++) {
      // from grid point i + shift + k before to grid point i now
      double u = (newBound - bound + (shift + k) * step) / deviation;
      System.arraycopy(weighted, before + shift + k, shifted, 0, shifted.length);
      add(next, shifted, norm * Math.exp(-u * u / 2) * step);
    }
  }

  private static void add(double[] sums, double[] values, double share) {
    for (int i = 0; i < sums.length; i++) {
      sums[i] += values[i] * share;
    }
  }

  private static double weight(int i) {
    return i < 3 ? END_WEIGHTS[i] : 1;
  }
}
