package railglow.supply;

/**
 * How far a supply's own meter may be off.
 *
 * @param absolute in the meter's unit
 * @param relative share of the value, 0.001 for 0.1 %
 */
public record MeterError(double absolute, double relative) {
  /** The error at a value, in the meter's unit. */
  public double at(double value) {
    return absolute + relative * Math.abs(value);
  }
}
