package railglow.run.reduction;

import java.util.Locale;
import railglow.camera.ArrivalClock;
import railglow.journal.CameraFacts;
import railglow.observed.Frame;
import railglow.observed.FrameMark;

/** When a run's frames were taken, and what is to be told of their rate. Not thread-safe. */
final class FrameTimes {
  private static final int FRAMES_BETWEEN = 64;
  private static final double STANDING_SHARE = 0.01;
  private static final double TOLD_SHARE = 0.05;
  private final ArrivalClock clock;
  private final boolean numbersAreCounted;
  private final ReductionListener listener;
  private double toldSeconds;
  private double lastSeconds;
  private int frames;
  private boolean inDoubt;

  FrameTimes(CameraFacts camera, ReductionListener listener) {
    this.clock =
        camera.timesAreExposures()
            ? ArrivalClock.recorded(camera.framesPerSecond(), camera.latencySeconds())
            : ArrivalClock.live(
                camera.framesPerSecond(), camera.latencySeconds(), camera.numbersAreCounted());
    this.numbersAreCounted = camera.numbersAreCounted();
    this.listener = listener;
    this.toldSeconds = 1 / camera.framesPerSecond();
    this.lastSeconds = toldSeconds;
  }

  /** Takes the next frame of the stream and gives its mid-exposure. */
  long midExposureNanos(Frame frame) {
    long midNanos = clock.midExposureNanos(frame);
    // Late or lost? Without a counter the time of a frame after a gap is in doubt.
    inDoubt = frame.marks().contains(FrameMark.AFTER_GAP) && !numbersAreCounted;
    inDoubt |= clock.isInDoubt();
    if (++frames % FRAMES_BETWEEN == 0) {
      tellOfRate(midNanos);
    }
    return midNanos;
  }

  /** Tells of a rate other than the one told last, once it stands. */
  private void tellOfRate(long nowNanos) {
    double period = clock.periodSeconds();
    boolean stands = Math.abs(period / lastSeconds - 1) < STANDING_SHARE;
    lastSeconds = period;
    if (stands && !inDoubt && Math.abs(period / toldSeconds - 1) > TOLD_SHARE) {
      listener.onNote(
          String.format(
              Locale.ROOT,
              "The camera gives %.4g frames a second now, where %.4g were expected",
              1 / period,
              1 / toldSeconds),
          nowNanos);
      toldSeconds = period;
    }
  }

  /**
   * How many frames a second there are by what was told so far; NaN while the newest frame's time
   * is in doubt, so that it must not be used.
   */
  double framesPerSecond() {
    return inDoubt ? Double.NaN : 1 / toldSeconds;
  }
}
