package railglow.cli;

/** Shows progress as a live line on a terminal, and as a plain line every few seconds elsewhere. */
final class ProgressLine {
  private static final long PLAIN_NANOS = 5_000_000_000L;
  private final Terminal terminal;
  private long nextPlainNanos;

  ProgressLine(Terminal terminal) {
    this.terminal = terminal;
  }

  void show(String line, long nowNanos) {
    if (terminal.isInteractive()) {
      terminal.live(line);
    } else if (nowNanos >= nextPlainNanos) {
      nextPlainNanos = nowNanos + PLAIN_NANOS;
      terminal.say(line);
    }
  }
}
