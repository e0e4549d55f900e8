package railglow.link;

/** The other end can't be reached at all: the operator must act. */
public final class CannotOpenException extends LinkException {
  /** Why. */
  public enum Reason {
    BUSY,
    PERMISSION_DENIED,
    NOT_FOUND,
    REFUSED,
    UNKNOWN_HOST,
    UNREACHABLE,
    NO_ANSWER,
    OTHER
  }

  private final Reason reason;

  public CannotOpenException(Reason reason, String sentence, Throwable cause) {
    super(sentence, cause);
    this.reason = reason;
  }

  public Reason reason() {
    return reason;
  }
}
