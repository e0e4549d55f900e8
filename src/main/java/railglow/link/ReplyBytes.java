package railglow.link;

import java.nio.charset.StandardCharsets;
import railglow.time.MonotonicClock;

/**
 * The bytes that came from a port and were not yet taken, and the ways to take a reply out of them.
 * Never holds more than one read beyond the longest reply.
 */
final class ReplyBytes {
  private static final int MOST_READS = 64;
  private final BytePort port;
  private final LinkSettings settings;
  private final MonotonicClock clock;
  private final Transcript transcript;
  private final byte[] chunk = new byte[4096];
  private byte[] held = new byte[4096];
  private int start;
  private int end;
  private boolean messageEnded;

  ReplyBytes(BytePort port, LinkSettings settings, MonotonicClock clock, Transcript transcript) {
    this.port = port;
    this.settings = settings;
    this.clock = clock;
    this.transcript = transcript;
  }

  void forget() {
    start = 0;
    end = 0;
    messageEnded = false;
  }

  /** Reads once; false if nothing came by the deadline. */
  private boolean more(long deadline) throws LinkException {
    int length = port.read(chunk, Math.max(0, deadline - clock.nanos()));
    if (length == 0) {
      return false;
    }
    transcript.received(clock.nanos(), chunk, length);
    if (start == end) {
      start = 0;
      end = 0;
    }
    if (end + length > held.length) {
      byte[] larger = new byte[Math.max(held.length * 2, end - start + length)];
      System.arraycopy(held, start, larger, 0, end - start);
      end -= start;
      start = 0;
      held = larger;
    }
    System.arraycopy(chunk, 0, held, end, length);
    end += length;
    messageEnded = port.traits().keepsMessageEnds() && length < chunk.length;
    return true;
  }

  private void need(long deadline, String what) throws LinkException {
    if (!more(deadline)) {
      String got = end > start ? ", only " + shown(start, end) : "";
      transcript.note(clock.nanos(), "timed out waiting for " + what);
      throw new LinkTimeoutException(
          "no " + what + " from " + port.description() + " in time" + got);
    }
  }

  /** One reply, without its end and without line ends and NULs before it. */
  String line(long deadline) throws LinkException {
    String ending = settings.replyEnd().text();
    int searched = 0;
    while (true) {
      while (start < end && isBlank(held[start])) {
        start++;
      }
      int found = find(ending, Math.max(start, searched));
      if (found >= 0) {
        String reply = text(start, found);
        start = found + ending.length();
        return reply.endsWith("\r") ? reply.substring(0, reply.length() - 1) : reply;
      }
      if (end - start > settings.maxReplyBytes()) {
        throw new OutOfStepException(
            port.description()
                + " sent more than "
                + settings.maxReplyBytes()
                + " bytes without an end, starting "
                + shown(start, end));
      }
      // offsets may move when bytes are added, so remember how many were searched
      int done = Math.max(0, end - start - ending.length() + 1);
      need(deadline, "reply");
      searched = start + done;
    }
  }

  /** Where the reply ends, -1 if it does not yet. */
  private int find(String ending, int from) {
    if (ending.isEmpty()) {
      return messageEnded && start < end ? end : -1;
    }
    for (int i = from; i + ending.length() <= end; i++) {
      if (held[i] == ending.charAt(0) && (ending.length() == 1 || held[i + 1] == '\n')) {
        return i;
      }
    }
    return -1;
  }

  /** The bytes of one block reply. */
  byte[] block(int maxBytes, long deadline) throws LinkException {
    while (start == end || isBlank(held[start])) {
      if (start == end) {
        need(deadline, "block");
      } else {
        start++;
      }
    }
    atLeast(2, deadline);
    int digits = held[start + 1] - '0';
    if (held[start] != '#' || digits < 0 || digits > 9) {
      throw new OutOfStepException(
          port.description() + " should send a block and sent " + shown(start, end));
    }
    if (digits == 0) {
      return openBlock(maxBytes, deadline);
    }
    atLeast(2 + digits, deadline);
    long length = 0;
    for (int i = 0; i < digits; i++) {
      int digit = held[start + 2 + i] - '0';
      if (digit < 0 || digit > 9) {
        throw new OutOfStepException(
            port.description() + " sent a block without a length: " + shown(start, end));
      }
      length = length * 10 + digit;
    }
    if (length > maxBytes) {
      throw new OutOfStepException(
          port.description() + " tells a block of " + length + " bytes, allowed are " + maxBytes);
    }
    atLeast(2 + digits + (int) length, deadline);
    int from = start + 2 + digits;
    byte[] bytes = java.util.Arrays.copyOfRange(held, from, from + (int) length);
    start = from + (int) length;
    String ending = settings.replyEnd().text();
    atLeast(ending.length(), deadline);
    if (find(ending, start) != start && !ending.isEmpty()) {
      throw new OutOfStepException(
          port.description() + " sent more after a block: " + shown(start, end));
    }
    start += ending.length();
    return bytes;
  }

  /** A block of untold length ends with a line end that is followed by silence. */
  private byte[] openBlock(int maxBytes, long deadline) throws LinkException {
    String ending = settings.replyEnd().text();
    while (true) {
      boolean lineEnd = endsWith(ending);
      if (messageEnded || lineEnd && !moreWithin(settings.quietNanos(), deadline)) {
        int last = lineEnd ? end - ending.length() : end;
        byte[] bytes = java.util.Arrays.copyOfRange(held, Math.min(start + 2, last), last);
        start = end;
        return bytes;
      }
      if (end - start > (long) maxBytes + 2 + ending.length()) {
        throw new OutOfStepException(
            port.description() + " sent a block of more than " + maxBytes + " bytes");
      }
      if (!lineEnd) {
        need(deadline, "end of block");
      }
    }
  }

  private void atLeast(int count, long deadline) throws LinkException {
    while (end - start < count) {
      need(deadline, "whole block");
    }
  }

  /** Takes the instrument's repetition of what it was sent. */
  void echo(String message, long deadline) throws LinkException {
    String echo = line(deadline);
    if (!echo.equals(message)) {
      throw new OutOfStepException(
          port.description() + " should send back '" + message + "' and sent '" + echo + "'");
    }
  }

  /** Waits until a time; what comes meanwhile is kept. */
  void collectUntil(long untilNanos) throws LinkException {
    while (untilNanos - clock.nanos() > 0) {
      if (port.traits().readsOnRequest()) {
        port.idle(untilNanos - clock.nanos());
      } else if (more(untilNanos)) {
        dropIfTooMuch();
      }
    }
  }

  /** Takes in what has come, and says whether there is anything that nobody asked for. */
  boolean unasked() throws LinkException {
    int reads = 0;
    while (!port.traits().readsOnRequest() && reads++ < MOST_READS && more(clock.nanos())) {
      dropIfTooMuch();
    }
    return firstUnasked() < end;
  }

  /** Refuses bytes that nobody asked for. */
  void requireNothingLeft() throws OutOfStepException {
    int first = firstUnasked();
    if (first < end) {
      throw new OutOfStepException(
          port.description() + " sent what nobody asked for: " + shown(first, end));
    }
    forget();
  }

  private int firstUnasked() {
    int first = start;
    while (first < end && isBlank(held[first])) {
      first++;
    }
    return first;
  }

  /** Bytes that nobody asked for are of no use; a flood of them must not fill the memory. */
  private void dropIfTooMuch() {
    if (end - start > settings.maxReplyBytes()) {
      end = start + 40;
    }
  }

  /**
   * Whether anything comes within a time.
   *
   * @throws LinkTimeoutException if the deadline is earlier and nothing has come by then
   */
  private boolean moreWithin(long nanos, long deadline) throws LinkException {
    long until = clock.nanos() + nanos;
    if (until - deadline <= 0) {
      return more(until);
    }
    if (!more(deadline)) {
      throw new LinkTimeoutException(
          port.description() + " could not be seen to fall silent in time");
    }
    return true;
  }

  /** Whether nothing but line ends comes for a time. */
  boolean silentFor(long nanos, long deadline) throws LinkException {
    do {
      if (firstUnasked() < end) {
        return false;
      }
    } while (moreWithin(nanos, deadline));
    return true;
  }

  /** Throws away what comes until nothing has come for a while. */
  void drain(long deadline) throws LinkException {
    forget();
    long quietUntil = clock.nanos() + settings.quietNanos();
    while (quietUntil - clock.nanos() > 0) {
      if (quietUntil - deadline > 0) {
        throw new LinkTimeoutException(port.description() + " does not fall silent");
      }
      if (more(quietUntil)) {
        forget();
        quietUntil = clock.nanos() + settings.quietNanos();
      }
    }
  }

  private boolean endsWith(String ending) {
    int from = end - ending.length();
    if (ending.isEmpty() || from < start) {
      return false;
    }
    return find(ending, from) == from;
  }

  private static boolean isBlank(byte b) {
    return b == '\n' || b == '\r' || b == 0;
  }

  private String text(int from, int to) {
    return new String(held, from, to - from, StandardCharsets.ISO_8859_1);
  }

  private String shown(int from, int to) {
    return TranscriptText.quoted(held, from, Math.min(to, from + 40))
        + (to > from + 40 ? "..." : "");
  }
}
