package railglow.supply;

import java.io.IOException;

/** An exchange with the supply that failed; the message is one sentence for the operator. */
public final class SupplyException extends IOException {
  /** What went wrong. */
  public enum Kind {
    /** No whole reply in time: the link is out of step until resynchronised. */
    NO_ANSWER,
    /** The link is broken: closed, refused, or gone. */
    LINK_BROKEN,
    /** A reply came that is no answer to the question: the link may be out of step. */
    NOT_UNDERSTOOD,
    /** The supply understood and refused, in its own words. */
    REFUSED,
    /** Another instrument answers at this address. */
    WRONG_SUPPLY
  }

  private final Kind kind;

  public SupplyException(Kind kind, String message) {
    super(message);
    this.kind = kind;
  }

  public SupplyException(Kind kind, String message, Throwable cause) {
    super(message, cause);
    this.kind = kind;
  }

  public Kind kind() {
    return kind;
  }

  /** Whether later bytes could be taken for the answer to a later question. */
  public boolean outOfStep() {
    return kind == Kind.NO_ANSWER || kind == Kind.LINK_BROKEN || kind == Kind.NOT_UNDERSTOOD;
  }
}
