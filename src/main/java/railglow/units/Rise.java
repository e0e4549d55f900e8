package railglow.units;

/** A temperature difference. Never an absolute temperature: that is {@link Celsius}. */
public record Rise(double kelvin) implements Comparable<Rise> {
  @Override
  public int compareTo(Rise other) {
    return Double.compare(kelvin, other.kelvin);
  }

  @Override
  public String toString() {
    return Quantity.format(kelvin, Unit.KELVIN);
  }
}
