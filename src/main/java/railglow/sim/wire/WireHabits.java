package railglow.sim.wire;

/**
 * How the simulated supply behaves on its wire.
 *
 * @param replySeconds from question to answer
 * @param messageEnd the character that ends a message; the other of CR and LF is passed over
 * @param replyEnd ends each answer
 * @param echo whether it sends back what it gets
 * @param secondsPerByte how long one byte is on the line, either way; 0 for a wire without delay
 * @param deafSeconds a message that comes sooner than this after the one before is lost
 */
public record WireHabits(
    double replySeconds,
    char messageEnd,
    String replyEnd,
    boolean echo,
    double secondsPerByte,
    double deafSeconds) {
  /** Start bit, eight data bits, stop bit. */
  private static final double BITS_PER_BYTE = 10;

  public WireHabits {
    if (messageEnd != '\n' && messageEnd != '\r') {
      throw new IllegalArgumentException("a message ends with LF or CR");
    }
  }

  /** LF both ways and no other peculiarity. */
  public static WireHabits plain(double replySeconds) {
    return new WireHabits(replySeconds, '\n', "\n", false, 0, 0);
  }

  public WireHabits withReplySeconds(double seconds) {
    return new WireHabits(seconds, messageEnd, replyEnd, echo, secondsPerByte, deafSeconds);
  }

  public WireHabits withEnds(char newMessageEnd, String newReplyEnd) {
    return new WireHabits(
        replySeconds, newMessageEnd, newReplyEnd, echo, secondsPerByte, deafSeconds);
  }

  public WireHabits withEcho(boolean newEcho) {
    return new WireHabits(replySeconds, messageEnd, replyEnd, newEcho, secondsPerByte, deafSeconds);
  }

  public WireHabits withBaud(int baud) {
    return new WireHabits(
        replySeconds, messageEnd, replyEnd, echo, BITS_PER_BYTE / baud, deafSeconds);
  }

  public WireHabits withDeafSeconds(double seconds) {
    return new WireHabits(replySeconds, messageEnd, replyEnd, echo, secondsPerByte, seconds);
  }
}
