package railglow.journal;

import java.io.IOException;

/** A run folder that can't be written or read; the message is a sentence for the operator. */
public final class JournalException extends IOException {
  public JournalException(String message) {
    super(message);
  }

  public JournalException(String message, Throwable cause) {
    super(message, cause);
  }
}
