package railglow.link;

/**
 * What was received is not the answer to what was asked, or could not be told from it. Nothing is
 * asked until the link is resynchronised.
 */
public final class OutOfStepException extends LinkException {
  public OutOfStepException(String message) {
    super(message, null);
  }
}
