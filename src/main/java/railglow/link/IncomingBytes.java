package railglow.link;

import java.io.IOException;

/**
 * Bytes that only come in, such as a camera's stream. Used by one thread; every wait is bounded.
 */
public interface IncomingBytes extends AutoCloseable {
  /** Given by {@link #read} when no byte will come any more. */
  int ENDED = -1;

  /** What and where this is, for messages. */
  String description();

  /**
   * Waits a bounded time for bytes.
   *
   * @return how many were put into the array, 0 when none came in time, or {@link #ENDED}
   * @throws IOException with one sentence for the operator when the stream is broken
   */
  int read(byte[] into, int offset, int length, long timeoutNanos) throws IOException;

  /** Ends the stream and frees what it holds; bounded in time, may be called again. */
  @Override
  void close();
}
