package railglow.live;

import railglow.observed.Frame;
import railglow.thermal.Look;
import railglow.thermal.Plane;
import railglow.thermal.Samples;

/**
 * The newest frame and the newest difference. Thread-safe; a frame is copied ten times a second.
 */
final class LivePictures {
  private static final long COPY_NANOS = 95_000_000;
  private final LiveFacts facts;
  private Samples copy;
  private long frameNumber = -1;
  private long nextCopyNanos = Long.MIN_VALUE;
  private Plane difference;
  private int differenceCycles;

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
    frameNumber = frame.number();
  }

  synchronized void onLook(Look look) {
    difference = look.inPhase();
    differenceCycles = look.cycles();
  }

  synchronized long frameNumber() {
    return frameNumber;
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
      number = frameNumber;
    }
    return LivePicture.ofTemperatures(number, mine, facts);
  }

  /** The newest mean ON minus OFF as a packet; null before the first look. */
  byte[] difference() {
    Plane mine;
    int cycles;
    synchronized (this) {
      mine = difference;
      cycles = differenceCycles;
    }
    return mine == null ? null : LivePicture.ofDifference(cycles, mine);
  }
}
