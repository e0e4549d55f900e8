package railglow.cli;

/** Shows how far a long work is, on a terminal only. */
final class Progress {
  private static final long EVERY = 256;
  private final Terminal terminal;
  private final String what;

  Progress(Terminal terminal, String what) {
    this.terminal = terminal;
    this.what = what;
  }

  void at(long count) {
    if (count % EVERY == 0) {
      terminal.live(count + " " + what);
    }
  }

  void end() {
    terminal.live("");
  }
}
