package railglow.safety;

/**
 * An upper limit and where it comes from.
 *
 * @param value in the unit of the envelope's field that holds it; infinite where nobody limits it
 * @param origin who says so, for example {@code "board file, rail 3V3"}
 */
public record Bound(double value, String origin) {
  public static final Bound NONE = new Bound(Double.POSITIVE_INFINITY, "nobody");

  public Bound {
    if (!(value >= 0)) {
      throw new IllegalArgumentException("a limit can't be " + value);
    }
  }

  /** The stricter of the two; the first when equal. */
  public Bound and(Bound other) {
    return other.value < value ? other : this;
  }

  public boolean isSet() {
    return value != Double.POSITIVE_INFINITY;
  }
}
