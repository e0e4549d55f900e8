package railglow.camera;

import java.io.IOException;
import java.util.Optional;
import railglow.observed.Frame;
import railglow.time.Step;

/**
 * The camera's loop, sole owner of its source: one bounded read per step; whole frames go to the
 * queue, and are dropped and counted when it is full. It never waits for a consumer.
 *
 * <p>{@link #step} and {@link #close} belong to one thread (close after the loop has ended); the
 * counters may be read from any.
 */
public final class CameraReader implements Step, AutoCloseable {
  private static final long READ_NANOS = 50_000_000;
  private static final long PAUSE_NANOS = 20_000_000;
  private final FrameSource source;
  private final FramePool pool;
  private final FrameQueue queue;
  private Frame inHand;
  private long lastNumber = -1;
  private volatile long framesArrived;
  private volatile long framesDropped;
  private volatile long framesMissing;
  private volatile long lastArrivalNanos = Long.MIN_VALUE;
  private volatile boolean ended;
  private volatile String failure;

  /**
   * @param pool of frames of this source; should hold more than the queue plus those in use
   */
  public CameraReader(FrameSource source, FramePool pool, FrameQueue queue) {
    this.source = source;
    this.pool = pool;
    this.queue = queue;
    this.inHand = new Frame(source.newSamples());
  }

  @Override
  public long step(long nowNanos) {
    if (lastArrivalNanos == Long.MIN_VALUE) {
      lastArrivalNanos = nowNanos;
    }
    try {
      switch (source.read(inHand, READ_NANOS)) {
        case FRAME -> handOn();
        case NOTHING_YET -> {
          // A source that can't wait returns at once: look again a little later.
          return nowNanos + PAUSE_NANOS;
        }
        case ENDED -> {
          ended = true;
          return FINISHED;
        }
      }
      return nowNanos;
    } catch (IOException e) {
      failure = e.getMessage();
      ended = true;
      return FINISHED;
    }
  }

  /** Frees the source. */
  @Override
  public void close() {
    source.close();
  }

  /** Whole frames the source gave. */
  public long framesArrived() {
    return framesArrived;
  }

  /** Frames lost by us, for want of a free buffer or a place in the queue. */
  public long framesDropped() {
    return framesDropped;
  }

  /** Frames that never came, by the gaps in their numbers. */
  public long framesMissing() {
    return framesMissing;
  }

  /**
   * When the newest frame came; until the first one, when the loop began; before that {@link
   * Long#MIN_VALUE}.
   */
  public long lastArrivalNanos() {
    return lastArrivalNanos;
  }

  /** Whether no frame will come any more. */
  public boolean hasEnded() {
    return ended;
  }

  /** Why the source broke, as a sentence, if it did. */
  public Optional<String> failure() {
    return Optional.ofNullable(failure);
  }

  private void handOn() {
    lastArrivalNanos = inHand.arrivalNanos();
    framesArrived = framesArrived + 1;
    if (lastNumber >= 0 && inHand.number() > lastNumber + 1) {
      framesMissing = framesMissing + inHand.number() - lastNumber - 1;
    }
    lastNumber = Math.max(lastNumber, inHand.number());
    Frame next = pool.take();
    if (next == null) {
      framesDropped = framesDropped + 1;
    } else if (queue.offer(inHand)) {
      inHand = next;
    } else {
      framesDropped = framesDropped + 1;
      pool.giveBack(next);
    }
  }
}
