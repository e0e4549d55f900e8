package railglow.run.pulsed;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import railglow.journal.FrameStoreWriter;
import railglow.journal.RunFolder;
import railglow.journal.SampleType;
import railglow.observed.Frame;
import railglow.thermal.Samples;
import railglow.time.MonotonicClock;

/**
 * Stores the frames that come before a run into a file that is thrown away, until storing keeps
 * pace. The first frames of a program that has just started take many times longer than later ones,
 * and a disk may be too slow at all: both must be over or known before the first pulse and not fill
 * the record's waiting room in it. From the second on, each frame is stored with the one before it
 * again and again, where there is time: the operator waits for three frames. Used by one thread.
 */
final class StoreRehearsal implements AutoCloseable {
  /** A frame and the one before it are stored again so many times. */
  private static final int MOST_PAIRS = 2;

  /** So many stores in a row must be quick enough. */
  private static final int IN_A_ROW = 8;

  /** Of a frame's period: the rest is left for a busy machine; the waiting room levels that. */
  private static final double SHARE = 0.8;

  private final Path file;
  private final FrameStoreWriter writer;
  private final MonotonicClock clock;
  private final long periodNanos;
  private final Frame before;
  private boolean holdsBefore;
  private int quick;
  private long lastNanos;

  private StoreRehearsal(
      Path file,
      FrameStoreWriter writer,
      Samples like,
      double framesPerSecond,
      MonotonicClock clock) {
    this.file = file;
    this.writer = writer;
    this.before = new Frame(like.newLike());
    this.clock = clock;
    this.periodNanos = Math.round(1e9 / framesPerSecond);
  }

  /**
   * @throws IOException with a sentence when the folder takes no file
   */
  static StoreRehearsal begin(
      RunFolder folder, Samples like, double framesPerSecond, MonotonicClock clock)
      throws IOException {
    Path file = folder.root().resolve("rehearsal.tmp");
    Files.createDirectories(folder.root());
    Files.deleteIfExists(file);
    return new StoreRehearsal(
        file,
        FrameStoreWriter.create(file, SampleType.of(like), like.width(), like.height()),
        like,
        framesPerSecond,
        clock);
  }

  /** Stores one frame and gives it back unchanged; nothing once the pace is kept. */
  void take(Frame frame) throws IOException {
    if (keepsPace()) {
      return;
    }
    long room = timeForOne() - store(frame);
    for (int pair = 0; holdsBefore && pair < MOST_PAIRS && room > 2 * lastNanos; pair++) {
      room -= store(before) + store(frame);
    }
    before.samples().copyFrom(frame.samples());
    holdsBefore = true;
  }

  /** Returns how long it took. */
  private long store(Frame frame) throws IOException {
    long begun = clock.nanos();
    writer.append(frame);
    lastNanos = clock.nanos() - begun;
    quick = lastNanos <= timeForOne() ? quick + 1 : 0;
    return lastNanos;
  }

  private long timeForOne() {
    return Math.round(SHARE * periodNanos);
  }

  /** Whether the last frames were stored well within their time. */
  boolean keepsPace() {
    return quick >= IN_A_ROW;
  }

  /** Why not, as one sentence. */
  String complaint() {
    return String.format(
        Locale.ROOT,
        "this machine can't keep the record: storing a frame took %.1f ms, and one comes every %.1f"
            + " ms; end other programs, or use a quicker disk",
        lastNanos / 1e6,
        periodNanos / 1e6);
  }

  /** Throws the file away. */
  @Override
  public void close() throws IOException {
    writer.close();
    Files.deleteIfExists(file);
  }
}
