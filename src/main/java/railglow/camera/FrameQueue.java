package railglow.camera;

import java.util.concurrent.ArrayBlockingQueue;
import railglow.observed.Frame;

/**
 * Frames on their way from the camera's thread to the one that uses them, in order. Bounded; never
 * blocks either side. Thread-safe.
 */
public final class FrameQueue {
  private final ArrayBlockingQueue<Frame> waiting;
  private final Runnable onOffer;

  /**
   * @param capacity frames that may wait
   * @param onOffer called on the camera's thread after each frame, to wake the consumer
   */
  public FrameQueue(int capacity, Runnable onOffer) {
    this.waiting = new ArrayBlockingQueue<>(capacity);
    this.onOffer = onOffer;
  }

  /** Hands a frame on, or refuses it when the queue is full. */
  public boolean offer(Frame frame) {
    boolean taken = waiting.offer(frame);
    if (taken) {
      onOffer.run();
    }
    return taken;
  }

  /** The oldest frame, now the caller's own, or null when none waits. */
  public Frame poll() {
    return waiting.poll();
  }

  public int waitingCount() {
    return waiting.size();
  }
}
