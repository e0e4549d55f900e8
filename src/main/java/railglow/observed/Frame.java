package railglow.observed;

import java.util.EnumSet;
import railglow.thermal.Samples;

/**
 * One camera image with its time. Pooled and reused: exactly one thread owns a frame at a time and
 * hands it on whole. Not thread-safe.
 */
public final class Frame {
  private final Samples samples;
  private final EnumSet<FrameMark> marks = EnumSet.noneOf(FrameMark.class);
  private long number;
  private long arrivalNanos;

  public Frame(Samples samples) {
    this.samples = samples;
  }

  /** Starts a new use of this frame: sets number and arrival, forgets the marks. */
  public void begin(long newNumber, long newArrivalNanos) {
    number = newNumber;
    arrivalNanos = newArrivalNanos;
    marks.clear();
  }

  /** Counts frames as the camera sent them, from 0; a gap in the numbers is a lost frame. */
  public long number() {
    return number;
  }

  /** Monotonic time when the last byte had arrived. */
  public long arrivalNanos() {
    return arrivalNanos;
  }

  public Samples samples() {
    return samples;
  }

  /** The live set itself. */
  public EnumSet<FrameMark> marks() {
    return marks;
  }
}
