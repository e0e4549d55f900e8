package railglow.camera;

import java.util.concurrent.ArrayBlockingQueue;
import java.util.function.Supplier;
import railglow.observed.Frame;
import railglow.thermal.Samples;

/**
 * The fixed set of frames of one camera, made once and used again and again. Thread-safe: the
 * reader takes, whoever is last gives back.
 */
public final class FramePool {
  private final ArrayBlockingQueue<Frame> free;

  /**
   * @param count how many frames there are; it bounds the memory
   * @param samples makes one image of the camera's kind
   */
  public FramePool(int count, Supplier<Samples> samples) {
    free = new ArrayBlockingQueue<>(count);
    for (int i = 0; i < count; i++) {
      free.add(new Frame(samples.get()));
    }
  }

  /** A free frame, now the caller's own, or null when all are in use. */
  public Frame take() {
    return free.poll();
  }

  /** Ends the caller's ownership. */
  public void giveBack(Frame frame) {
    if (!free.offer(frame)) {
      throw new IllegalStateException("a frame was given back twice");
    }
  }

  public int freeCount() {
    return free.size();
  }
}
