package railglow.link;

import java.io.IOException;

/**
 * A way for bytes, without any idea of messages. Every call returns or throws within its time-out.
 * Owned by one thread.
 */
public interface BytePort extends AutoCloseable {
  /**
   * What kind of way this is.
   *
   * @param freshAfterOpen whether bytes from before an opening can never be read after it: true for
   *     connections, false where the device itself may still be sending
   * @param readsOnRequest whether reading without a reply due disturbs the device (USBTMC), so that
   *     one must never look for bytes that nobody asked for
   * @param keepsMessageEnds whether one read gives one whole message
   * @param nanosPerByte how long a byte is on its way after it was handed over; 0 where that does
   *     not matter
   */
  record Traits(
      boolean freshAfterOpen, boolean readsOnRequest, boolean keepsMessageEnds, long nanosPerByte) {
    /** Of a way that takes no time for a byte. */
    Traits(boolean freshAfterOpen, boolean readsOnRequest, boolean keepsMessageEnds) {
      this(freshAfterOpen, readsOnRequest, keepsMessageEnds, 0);
    }
  }

  Traits traits();

  /**
   * Opens; closes first if it is open.
   *
   * @throws CannotOpenException with a sentence for the operator
   */
  void open(long timeoutNanos) throws LinkException;

  /**
   * Writes until all is handed over or the time is over.
   *
   * @return the number of bytes handed over
   * @throws LinkLostException if the connection is gone
   * @throws LinkTimeoutException if it is not known how many were handed over in time
   */
  int write(byte[] bytes, long timeoutNanos) throws LinkException;

  /**
   * Reads what there is, waiting for the first byte if there is nothing.
   *
   * @return the number of bytes read, 0 if none came in time
   * @throws LinkLostException if the connection is gone
   */
  int read(byte[] into, long timeoutNanos) throws LinkException;

  /**
   * Hands a message over without needing any memory, whatever else is under way, and waits no
   * longer than the system's own call does. For a program that has no memory left.
   *
   * @return whether all of it was handed over
   * @throws IOException when the way is broken; or any error the lack of memory leads to
   */
  boolean writeWithoutMemory(ReadyMessage message) throws IOException;

  /** Waits without touching the wire. */
  void idle(long nanos);

  /** One phrase for the operator. */
  String description();

  @Override
  void close();
}
