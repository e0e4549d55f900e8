package railglow.units;

/** An absolute temperature. The difference of two is a {@link Rise}. */
public record Celsius(double degrees) implements Comparable<Celsius> {
  public Rise above(Celsius other) {
    return new Rise(degrees - other.degrees);
  }

  public Celsius plus(Rise rise) {
    return new Celsius(degrees + rise.kelvin());
  }

  @Override
  public int compareTo(Celsius other) {
    return Double.compare(degrees, other.degrees);
  }

  @Override
  public String toString() {
    return Quantity.format(degrees, Unit.CELSIUS);
  }
}
