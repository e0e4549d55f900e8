package railglow.link;

import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.concurrent.TimeUnit;

/**
 * The standard output of a program started for the purpose, such as a video converter or a camera's
 * own reader. The program gets no input; what it writes as errors is drained always, and the end of
 * it is kept for the message when the program dies.
 *
 * <p>Used by one thread; two threads of its own empty the program's pipes.
 */
public final class IncomingBytesFromChild implements IncomingBytes {
  private static final int BUFFER_BYTES = 8 << 20;
  private static final int CHUNK_BYTES = 64 << 10;
  private static final long GRACE_MILLIS = 500;
  private final String description;
  private final Process process;
  private final ByteRing ring = new ByteRing(BUFFER_BYTES);
  private final LastWords lastWords = new LastWords();
  private final Thread errors;
  private boolean closed;

  private IncomingBytesFromChild(String description, Process process) {
    this.description = description;
    this.process = process;
    start("camera-child-output", () -> pump(process.getInputStream()));
    errors = start("camera-child-errors", () -> drain(process.getErrorStream()));
  }

  /**
   * Starts the program.
   *
   * @param command the program and its arguments; no shell is involved
   * @throws IOException with one sentence that says what to do
   */
  public static IncomingBytesFromChild start(List<String> command) throws IOException {
    String shown = String.join(" ", command);
    try {
      Process process = new ProcessBuilder(command).start();
      process.getOutputStream().close();
      return new IncomingBytesFromChild("'" + shown + "'", process);
    } catch (IOException e) {
      throw new IOException(
          "can't start '" + shown + "' (" + e.getMessage() + "); is the program installed?", e);
    }
  }

  @Override
  public String description() {
    return description;
  }

  @Override
  public int read(byte[] into, int offset, int length, long timeoutNanos) throws IOException {
    int count = ring.take(into, offset, length, timeoutNanos);
    if (count != ENDED || closed) {
      return count;
    }
    int exit = exitCode();
    if (exit == 0) {
      return ENDED;
    }
    throw new IOException(
        description
            + (exit == Integer.MIN_VALUE
                ? " closed its output but runs on"
                : " ended with exit code " + exit)
            + lastWords.sentence());
  }

  /** Asks the program to end, and ends it by force, with all it started, when it doesn't. */
  @Override
  public void close() {
    closed = true;
    ring.close();
    List<ProcessHandle> started = process.descendants().toList();
    process.destroy();
    started.forEach(ProcessHandle::destroy);
    if (!endsWithin(GRACE_MILLIS)) {
      process.destroyForcibly();
      endsWithin(GRACE_MILLIS);
    }
    started.forEach(ProcessHandle::destroyForcibly);
  }

  public boolean isAlive() {
    return process.isAlive();
  }

  private int exitCode() {
    boolean ended = endsWithin(GRACE_MILLIS);
    try {
      errors.join(GRACE_MILLIS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    return ended ? process.exitValue() : Integer.MIN_VALUE;
  }

  private boolean endsWithin(long millis) {
    try {
      return process.waitFor(millis, TimeUnit.MILLISECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return !process.isAlive();
    }
  }

  private void pump(InputStream output) {
    byte[] chunk = new byte[CHUNK_BYTES];
    try (output) {
      int count = output.read(chunk);
      while (count >= 0 && ring.put(chunk, count)) {
        count = output.read(chunk);
      }
    } catch (IOException e) {
      lastWords.add("its output broke: " + e.getMessage());
    } finally {
      ring.end();
    }
  }

  private void drain(InputStream stream) {
    byte[] chunk = new byte[CHUNK_BYTES];
    try (stream) {
      int count = stream.read(chunk);
      while (count >= 0) {
        lastWords.add(chunk, count);
        count = stream.read(chunk);
      }
    } catch (IOException e) {
      lastWords.add("its error output broke: " + e.getMessage());
    }
  }

  private static Thread start(String name, Runnable body) {
    Thread thread = new Thread(body, name);
    thread.setDaemon(true);
    thread.start();
    return thread;
  }
}
