package railglow.sim;

import railglow.units.Interval;

/** What runs of one kind told of a swing, over the truth. Not thread-safe. */
public final class ToldOverTruth {
  private double sum;
  private double squares;
  private double least = Double.POSITIVE_INFINITY;
  private double most = Double.NEGATIVE_INFINITY;
  private double widths;
  private int holds;
  private int runs;

  /** All in the same unit. */
  public void add(double told, Interval interval95, double truth) {
    double ratio = told / truth;
    sum += ratio;
    squares += ratio * ratio;
    least = Math.min(least, ratio);
    most = Math.max(most, ratio);
    widths += (interval95.high() - interval95.low()) / truth;
    holds += interval95.contains(truth) ? 1 : 0;
    runs++;
  }

  public int runs() {
    return runs;
  }

  public double mean() {
    return sum / runs;
  }

  double least() {
    return least;
  }

  double most() {
    return most;
  }

  /** Standard deviation of what was told. */
  public double spread() {
    return Math.sqrt(Math.max(0, squares / runs - mean() * mean()));
  }

  /** In the mean. */
  public double intervalWidth() {
    return widths / runs;
  }

  /** Intervals that hold the truth. */
  public int holds() {
    return holds;
  }
}
