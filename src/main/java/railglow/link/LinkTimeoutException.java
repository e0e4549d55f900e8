package railglow.link;

/**
 * The time was over before the message was sent or the reply was whole. The reply may still come:
 * the link is out of step until it is resynchronised.
 */
public final class LinkTimeoutException extends LinkException {
  public LinkTimeoutException(String message) {
    super(message, null);
  }
}
