package railglow.run.pulsed;

import java.io.IOException;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import railglow.camera.CameraDescriptor;
import railglow.camera.CameraReader;
import railglow.camera.FramePool;
import railglow.camera.FrameQueue;
import railglow.camera.FrameSource;
import railglow.observed.Frame;

/** Pool, queue and reader of one run's frames. The queue has one taker at a time. */
public final class FrameIntake {
  private static final long MOST_POOL_BYTES = 64L << 20;

  /** Looks at large pictures need most of a small heap. */
  private static final int SHARE_OF_HEAP = 8;

  /** Room for this long: a busy machine or a disk may stand still for seconds. */
  private static final double WANTED_SECONDS = 4;

  private static final int LEAST_FRAMES = 24;

  /** As many as storing is rehearsed with: none waits for the other. */
  private static final int FIRST_FRAMES = 3;

  private final FrameSource source;
  private final FramePool pool;
  private final FrameQueue queue;
  private final CameraReader reader;
  private final AtomicReference<Runnable> wakeTaker = new AtomicReference<>(() -> {});
  private final int frames;
  private int seen;

  public FrameIntake(FrameSource source, CameraDescriptor camera) {
    this(source, camera, 0);
  }

  /**
   * @param heldSeconds of frames that somebody may hold besides those on their way
   */
  public FrameIntake(FrameSource source, CameraDescriptor camera, double heldSeconds) {
    this.source = source;
    long bytes =
        (camera.isFloat() ? 4L : 2L) * camera.profile().width() * camera.profile().height();
    int wanted = (int) Math.ceil(WANTED_SECONDS * camera.framesPerSecond());
    long room = Math.min(MOST_POOL_BYTES, Runtime.getRuntime().maxMemory() / SHARE_OF_HEAP);
    int held = (int) Math.ceil(heldSeconds * camera.framesPerSecond());
    this.frames = held + (int) Math.max(LEAST_FRAMES, Math.min(wanted, room / bytes));
    this.pool = new FramePool(frames, source::newSamples);
    this.queue = new FrameQueue(frames, () -> wakeTaker.get().run());
    this.reader = new CameraReader(source, pool, queue);
  }

  public CameraReader reader() {
    return reader;
  }

  public FrameQueue queue() {
    return queue;
  }

  public int poolSize() {
    return frames;
  }

  public void giveBack(Frame frame) {
    pool.giveBack(frame);
  }

  public void wakeWith(Runnable wake) {
    wakeTaker.set(wake);
  }

  /** Throws away what has come, so that nothing is old when the run begins. */
  public void discard() {
    for (Frame frame = queue.poll(); frame != null; frame = queue.poll()) {
      pool.giveBack(frame);
      seen++;
    }
  }

  /** The same, and storing is rehearsed with it. */
  void discard(StoreRehearsal rehearsal) throws IOException {
    for (Frame frame = queue.poll(); frame != null; frame = queue.poll()) {
      try {
        rehearsal.take(frame);
      } finally {
        pool.giveBack(frame);
      }
      seen++;
    }
  }

  /** Whether the stream is seen to run. */
  public boolean runs() {
    return seen >= FIRST_FRAMES;
  }

  public Optional<String> failure() {
    return reader.failure();
  }

  public String silence() {
    return "the camera (" + source.description() + ") gave " + seen + " frames; does it stream?";
  }
}
