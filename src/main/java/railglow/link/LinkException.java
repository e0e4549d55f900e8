package railglow.link;

import java.io.IOException;

/**
 * Something went wrong on a link. The subclasses differ by what the caller must do; the message is
 * one sentence for the operator.
 */
public abstract sealed class LinkException extends IOException
    permits CannotOpenException, LinkLostException, LinkTimeoutException, OutOfStepException {
  LinkException(String message, Throwable cause) {
    super(message, cause);
  }
}
