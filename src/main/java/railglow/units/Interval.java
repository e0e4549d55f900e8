package railglow.units;

/** A closed range of a number whose unit stands in the name of whatever holds it. */
public record Interval(double low, double high) {
  /** Standard deviations in half of it; stored findings are made with these digits. */
  private static final double SIGMAS_95 = 1.959963985;

  public Interval {
    if (!(low <= high)) {
      throw new IllegalArgumentException("an interval from " + low + " to " + high + " is empty");
    }
  }

  /** The standard deviation of an error of which this is the 95 % interval. */
  public double sigmaOf95() {
    return (high - low) / (2 * SIGMAS_95);
  }

  public boolean contains(double value) {
    return value >= low && value <= high;
  }
}
