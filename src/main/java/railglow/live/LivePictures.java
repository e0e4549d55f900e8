package railglow.live;

import railglow.observed.Frame;
import railglow.thermal.Look;
import railglow.thermal.Plane;
import railglow.thermal.Samples;

/**
 * The newest frame and the newest difference, numbered through all runs of a session. Thread-safe;
 * a frame is copied ten times a second.
 */
final class LivePictures {
  private static final long COPY_NANOS = 95_000_000;
  private final LiveFacts facts;
  private Samples copy;
  private long frameCount;
  private long nextCopyNanos = Long.MIN_VALUE;
  private Plane difference;
  private long differenceCount;

  LivePictures(LiveFacts facts) {
    this.facts = facts;
  }

  synchronized void onFrame(Frame frame) {
    if (frame.arrivalNanos() < nextCopyNanos) {
      return;
    }
    nextCopyNanos = frame.arrivalNanos() + COPY_NANOS;
    if (copy == null) {
      copy = frame.samples().newLike();
    }
    copy.copyFrom(frame.samples());
    frameCount++;
  }

  synchronized void onLook(Look look) {
    difference = look.inPhase();
    differenceCount++;
  }

  /** A new run: there is no difference yet. */
  synchronized void begin() {
    difference = null;
    differenceCount++;
  }

  /** Grows with every new frame; 0 before the first. */
  synchronized long frameCount() {
    return frameCount;
  }

  /** Grows with every change of the difference; 0 before the first. */
  synchronized long differenceCount() {
    return differenceCount;
  }

  /** The newest frame as a packet; null before the first. */
  byte[] now() {
    Samples mine;
    long number;
    synchronized (this) {
      if (copy == null) {
        return null;
      }
      mine = copy.newLike();
      mine.copyFrom(copy);
      number = frameCount;
    }
    return LivePicture.ofTemperatures(number, mine, facts);
  }

  /** The newest mean ON minus OFF as a packet; null before the first look of a run. */
  byte[] difference() {
    Plane mine;
    long number;
    synchronized (this) {
      mine = difference;
      number = differenceCount;
    }
    return mine == null ? null : LivePicture.ofDifference(number, mine);
  }
}
