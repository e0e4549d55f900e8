package railglow.link;

/**
 * The connection ended: closed by the other end, or the port vanished. What was sent last may or
 * may not have arrived. The link must be resynchronised.
 */
public final class LinkLostException extends LinkException {
  public LinkLostException(String message, Throwable cause) {
    super(message, cause);
  }
}
