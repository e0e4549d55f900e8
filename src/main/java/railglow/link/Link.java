package railglow.link;

import java.util.List;

/**
 * Messages to and from one instrument, one exchange at a time.
 *
 * <p>Texts are in ISO 8859-1: one character for each byte, without terminators. Every call returns
 * or throws within its time-out. Not thread-safe: one thread owns a link.
 *
 * <p>A link is <em>in step</em> when it is known that no reply is under way. Any failure takes it
 * out of step, and then no byte is ever taken as the answer to a later question until {@link
 * #resynchronise} has succeeded.
 */
public interface Link extends AutoCloseable {
  /**
   * Sends a question and reads its one reply.
   *
   * @throws OutOfStepException without sending anything if the link is out of step; or if bytes
   *     came that nobody asked for, which makes the answer doubtful
   * @throws LinkTimeoutException if no whole reply came in time
   * @throws LinkLostException if the connection ended
   * @throws IllegalArgumentException if the request holds a line end
   */
  String exchange(String request, long timeoutNanos) throws LinkException;

  /**
   * Sends a question whose reply is one block ({@code #<digits><length><bytes>} or {@code #0}).
   *
   * @param maxBytes the largest block accepted
   * @return the block's bytes
   * @throws OutOfStepException also if the reply is no block or a larger one
   */
  byte[] exchangeBlock(String request, int maxBytes, long timeoutNanos) throws LinkException;

  /**
   * Sends a message that has no reply. Allowed while the link is out of step, so that an output can
   * be switched off at once; only after a message that was sent in part must the link be
   * resynchronised first. If bytes came before it that nobody asked for, the message still goes
   * out, and the link is out of step afterwards.
   *
   * @throws IllegalArgumentException if the message holds a line end
   */
  void send(String message, long timeoutNanos) throws LinkException;

  /** Makes messages that have no reply, to be sent together by {@link #sendWithoutMemory}. */
  ReadyMessage ready(List<String> messages);

  /**
   * Sends what was made ready without needing any memory, in whatever state the link is, and never
   * throws. The link is out of step afterwards. For a program that has no memory left, and only for
   * a message that may be said at any time.
   *
   * @return whether all of it was handed over
   */
  boolean sendWithoutMemory(ReadyMessage message);

  boolean inStep();

  /**
   * Opens the link, anew if that helps, and proves that what is read next answers what is asked
   * next. Also the way to open a link for the first time. Does nothing to the instrument but ask
   * the question the settings name; a connection on which nothing was ever asked needs none.
   *
   * @throws CannotOpenException if there is nothing to connect to; with a sentence for the operator
   * @throws LinkTimeoutException if nothing was proven in time; messages without reply may be sent
   */
  void resynchronise(long timeoutNanos) throws LinkException;

  /** One phrase for the operator: what this is and where it goes. */
  String description();

  @Override
  void close();
}
