package railglow.link;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Locale;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.atomic.AtomicLong;
import railglow.time.Step;

/**
 * A transcript written to a text file, one line for each message: seconds since the start, a mark
 * ({@code >} sent, {@code <} received, {@code #} note) and the bytes.
 *
 * <p>The link's thread only puts into a bounded buffer; the step, on a thread of its own, writes.
 * Where the buffer is full lines are dropped, counted, and the gap is written down. A disk that
 * fails ends the file and not the run.
 */
public final class TranscriptFile implements Transcript, Step, AutoCloseable {
  private static final long INTERVAL_NANOS = Duration.ofMillis(100).toNanos();
  private static final int CAPACITY = 4096;
  private static final int MOST_BYTES = 256;

  private record Line(long nanos, char mark, byte[] bytes, int length) {}

  private final BlockingQueue<Line> buffer = new ArrayBlockingQueue<>(CAPACITY);
  private final AtomicLong lost = new AtomicLong();
  private final long originNanos;
  private final BufferedWriter out;
  private long lostWritten;
  private volatile IOException failure;

  /**
   * @param originNanos the monotonic time that counts as 0
   * @throws IOException if the file can't be made
   */
  public TranscriptFile(Path file, long originNanos) throws IOException {
    this.originNanos = originNanos;
    out = Files.newBufferedWriter(file, StandardCharsets.US_ASCII);
  }

  @Override
  public void sent(long nowNanos, byte[] bytes, int length) {
    put(nowNanos, '>', bytes, length);
  }

  @Override
  public void received(long nowNanos, byte[] bytes, int length) {
    put(nowNanos, '<', bytes, length);
  }

  @Override
  public void note(long nowNanos, String text) {
    byte[] bytes = text.getBytes(StandardCharsets.ISO_8859_1);
    put(nowNanos, '#', bytes, bytes.length);
  }

  private void put(long nowNanos, char mark, byte[] bytes, int length) {
    byte[] kept = java.util.Arrays.copyOf(bytes, Math.min(Math.max(0, length), MOST_BYTES));
    if (!buffer.offer(new Line(nowNanos, mark, kept, Math.max(0, length)))) {
      lost.incrementAndGet();
    }
  }

  /** Lines that were dropped because the buffer was full. */
  public long linesLost() {
    return lost.get();
  }

  /** Why the file ended early; null while it has not. */
  public IOException failure() {
    return failure;
  }

  @Override
  public synchronized long step(long nowNanos) {
    if (failure != null) {
      return Step.FINISHED;
    }
    try {
      for (Line line = buffer.poll(); line != null; line = buffer.poll()) {
        write(line);
      }
      long gap = lost.get() - lostWritten;
      if (gap > 0) {
        out.write("# " + gap + " lines lost here\n");
        lostWritten += gap;
      }
      out.flush();
    } catch (IOException e) {
      failure = e;
      return Step.FINISHED;
    }
    return nowNanos + INTERVAL_NANOS;
  }

  private void write(Line line) throws IOException {
    long nanos = line.nanos() - originNanos;

    out.write(String.format(Locale.ROOT, "%.6f %c ", nanos / 1e9, line.mark()));
    out.write(TranscriptText.quoted(line.bytes(), 0, line.bytes().length));
    if (line.length() > line.bytes().length) {
      out.write(" and " + (line.length() - line.bytes().length) + " bytes more");
    }
    out.write('\n');
  }

  /** Writes what is left; call when the link is closed and the step's thread has ended. */
  @Override
  public synchronized void close() throws IOException {
    step(0);
    out.close();
    if (failure != null) {
      throw failure;
    }
  }
}
