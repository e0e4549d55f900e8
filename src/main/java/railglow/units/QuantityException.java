package railglow.units;

/** A text that is not a quantity of the wanted unit; the message says what was wanted. */
public final class QuantityException extends IllegalArgumentException {
  public QuantityException(String message) {
    super(message);
  }
}
