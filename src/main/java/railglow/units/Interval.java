package railglow.units;

/** A closed range of a number whose unit stands in the name of whatever holds it. */
public record Interval(double low, double high) {
  public Interval {
    if (!(low <= high)) {
      throw new IllegalArgumentException("an interval from " + low + " to " + high + " is empty");
    }
  }

  public boolean contains(double value) {
    return value >= low && value <= high;
  }
}
