package railglow.run;

import java.io.IOException;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.function.Consumer;
import railglow.journal.FrameStoreReader;
import railglow.observed.Frame;

/**
 * Stored frames in their order, decoded by a thread of its own while the frames before are being
 * used: decoding and reducing cost about the same. Frames are borrowed and given back; no more than
 * {@link #DEPTH} exist. For one using thread.
 */
final class FramesAhead implements AutoCloseable {
  static final int DEPTH = 8;
  private final FrameStoreReader reader;
  private final BlockingQueue<Decoded> decoded = new ArrayBlockingQueue<>(DEPTH + 1);
  private final BlockingQueue<Frame> free = new ArrayBlockingQueue<>(DEPTH);
  private final Consumer<Frame> seen;
  private final Thread thread = new Thread(this::decode, "frames-ahead");

  /** A frame; or, without one, the end, which may be a failure. */
  private record Decoded(Frame frame, Throwable failure) {}

  /** The reader belongs to this until it is closed. */
  FramesAhead(FrameStoreReader reader) {
    this(reader, frame -> {});
  }

  /**
   * As above.
   *
   * @param seen told of each frame, on the decoding thread, before it can be taken
   */
  FramesAhead(FrameStoreReader reader, Consumer<Frame> seen) {
    this.reader = reader;
    this.seen = seen;
    for (int i = 0; i < DEPTH; i++) {
      free.add(new Frame(reader.newSamples()));
    }
    thread.setDaemon(true);
    thread.start();
  }

  /**
   * The next frame, to be given back; null at the end.
   *
   * @throws IOException what the reader threw
   */
  Frame next() throws IOException {
    try {
      Decoded next = decoded.take();
      if (next.frame() == null) {
        decoded.add(next); // so that asking again gives the same answer
        raise(next.failure());
      }
      return next.frame();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("interrupted while frames were read", e);
    }
  }

  void giveBack(Frame frame) {
    free.add(frame);
  }

  @Override
  public void close() {
    thread.interrupt();
    boolean interrupted = false;
    while (thread.isAlive()) {
      try {
        thread.join();
      } catch (InterruptedException e) {
        interrupted = true;
      }
    }
    if (interrupted) {
      Thread.currentThread().interrupt();
    }
  }

  private void decode() {
    Throwable failure = null;
    try {
      Frame frame = free.take();
      while (reader.next(frame)) {
        seen.accept(frame);
        decoded.put(new Decoded(frame, null));
        frame = free.take();
      }
    } catch (InterruptedException e) {
      return; // closed before the end
    } catch (IOException | RuntimeException | Error e) {
      failure = e;
    }
    decoded.add(new Decoded(null, failure));
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
