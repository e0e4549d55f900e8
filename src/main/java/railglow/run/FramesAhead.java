package railglow.run;

import java.io.IOException;
import java.util.Arrays;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.function.Consumer;
import railglow.journal.FrameStoreReader;
import railglow.observed.Frame;

/**
 * Stored frames in their order, decoded by a thread of its own and looked at by another, while the
 * frames before are being used: all three cost about the same. Threads hand over several frames at
 * a time, for waking one up costs as much as a part of a frame. Frames are borrowed and given back;
 * no more than {@link #DEPTH} exist. For one using thread.
 */
final class FramesAhead implements AutoCloseable {
  private static final int BATCH = 8;
  private static final int BATCHES = 6;
  static final int DEPTH = BATCH * BATCHES;
  private final FrameStoreReader reader;
  private final Consumer<Frame> seen;
  private final BlockingQueue<Batch> free = queue();
  private final BlockingQueue<Batch> decoded = queue();
  private final BlockingQueue<Batch> ready = queue();
  private final Thread decoding = new Thread(this::decode, "frames-ahead");
  private final Thread seeing = new Thread(this::see, "frames-seen");
  private Batch lending;
  private int lent;
  private Frame[] back = new Frame[BATCH];
  private int givenBack;

  /** Frames; where there are fewer than a batch has, the end, which may be a failure. */
  private record Batch(Frame[] frames, int count, Throwable failure) {
    boolean isLast() {
      return count < BATCH;
    }
  }

  /** The reader belongs to this until it is closed. */
  FramesAhead(FrameStoreReader reader) {
    this(reader, frame -> {});
  }

  /**
   * As above.
   *
   * @param seen told of each frame in its order, on one thread, before it can be taken
   */
  FramesAhead(FrameStoreReader reader, Consumer<Frame> seen) {
    this.reader = reader;
    this.seen = seen;
    for (int i = 0; i < BATCHES; i++) {
      Frame[] frames = new Frame[BATCH];
      Arrays.setAll(frames, k -> new Frame(reader.newSamples()));
      free.add(new Batch(frames, BATCH, null));
    }
    decoding.setDaemon(true);
    decoding.start();
    seeing.setDaemon(true);
    seeing.start();
  }

  /**
   * The next frame, to be given back; null at the end.
   *
   * @throws IOException what the reader threw
   */
  Frame next() throws IOException {
    try {
      while (lending == null || lent == lending.count()) {
        if (lending != null && lending.isLast()) {
          raise(lending.failure());
          return null;
        }
        lending = ready.take();
        lent = 0;
      }
      return lending.frames()[lent++];
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("interrupted while frames were read", e);
    }
  }

  void giveBack(Frame frame) {
    back[givenBack++] = frame;
    if (givenBack == BATCH) {
      free.add(new Batch(back, BATCH, null));
      back = new Frame[BATCH];
      givenBack = 0;
    }
  }

  @Override
  public void close() {
    decoding.interrupt();
    seeing.interrupt();
    boolean interrupted = false;
    while (decoding.isAlive() || seeing.isAlive()) {
      try {
        decoding.join();
        seeing.join();
      } catch (InterruptedException e) {
        interrupted = true;
      }
    }
    if (interrupted) {
      Thread.currentThread().interrupt();
    }
  }

  private void decode() {
    Frame[] frames = null;
    int count = 0;
    Throwable failure = null;
    try {
      boolean more = true;
      while (more) {
        frames = free.take().frames();
        count = 0;
        while (count < BATCH && (more = reader.next(frames[count]))) {
          count++;
        }
        if (more) {
          decoded.add(new Batch(frames, count, null));
        }
      }
    } catch (InterruptedException e) {
      return; // closed before the end
    } catch (IOException | RuntimeException | Error e) {
      failure = e;
    }
    decoded.add(new Batch(frames, count, failure));
  }

  private void see() {
    Batch batch = null;
    int count = 0;
    try {
      do {
        batch = decoded.take();
        for (count = 0; count < batch.count(); count++) {
          seen.accept(batch.frames()[count]);
        }
        ready.add(batch);
      } while (!batch.isLast());
    } catch (InterruptedException e) {
      return; // closed before the end
    } catch (RuntimeException | Error e) {
      ready.add(new Batch(batch.frames(), count, e));
    }
  }

  private static BlockingQueue<Batch> queue() {
    return new ArrayBlockingQueue<>(BATCHES + 1);
  }

  private static void raise(Throwable failure) throws IOException {
    if (failure instanceof IOException io) {
      throw io;
    } else if (failure instanceof RuntimeException unchecked) {
      throw unchecked;
    } else if (failure instanceof Error error) {
      throw error;
    }
  }
}
