package railglow.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.InterruptedIOException;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.util.List;
import java.util.concurrent.CountDownLatch;

/**
 * Where the program's words go: answers to the standard output, complaints to the error output. A
 * live line is only drawn over itself on a real terminal; in a pipe there are no control codes.
 */
final class Terminal {
  private static final int WIDTH = 100;
  private final PrintStream out;
  private final PrintStream err;
  private final boolean interactive;
  private final InputStream typed;
  private int liveLength;

  /** One at which nobody types. */
  Terminal(PrintStream out, PrintStream err, boolean interactive) {
    this(out, err, interactive, new NobodyTypes());
  }

  Terminal(PrintStream out, PrintStream err, boolean interactive, InputStream typed) {
    this.typed = typed;
    this.out = out;
    this.err = err;
    this.interactive = interactive;
  }

  static Terminal ofProcess() {
    boolean dumb = "dumb".equals(System.getenv("TERM"));
    return new Terminal(System.out, System.err, System.console() != null && !dumb, System.in);
  }

  PrintWriter answers() {
    return new PrintWriter(out, true);
  }

  PrintWriter complaints() {
    return new PrintWriter(err, true);
  }

  /** What is typed, or what a pedal sends. */
  InputStream typed() {
    return typed;
  }

  boolean isInteractive() {
    return interactive;
  }

  synchronized void say(String line) {
    clearLive();
    out.println(line);
    out.flush();
  }

  synchronized void say(List<String> lines) {
    clearLive();
    lines.forEach(out::println);
    out.flush();
  }

  synchronized void complain(String line) {
    clearLive();
    err.println(line);
    err.flush();
  }

  /** Rings the bell; a terminal only. */
  synchronized void bell() {
    if (interactive) {
      out.print('\u0007');
      out.flush();
    }
  }

  /** Replaces the live line; a terminal only. */
  synchronized void live(String line) {
    if (!interactive) {
      return;
    }
    String cut = line.length() > WIDTH ? line.substring(0, WIDTH) : line;
    out.print("\r" + cut + " ".repeat(Math.max(0, liveLength - cut.length())));
    out.flush();
    liveLength = cut.length();
  }

  private void clearLive() {
    if (liveLength > 0) {
      out.print("\r" + " ".repeat(liveLength) + "\r");
      liveLength = 0;
    }
  }

  /** Neither a key nor the end of the input ever comes. */
  private static final class NobodyTypes extends InputStream {
    @Override
    public int read() throws IOException {
      try {
        new CountDownLatch(1).await();
        return -1;
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        throw new InterruptedIOException("nobody types here");
      }
    }
  }
}
