package railglow.run.ladder;

import railglow.camera.HottestPixel;
import railglow.journal.Entry;
import railglow.observed.Frame;
import railglow.run.Scribe;
import railglow.run.pulsed.FrameIntake;
import railglow.time.Step;

/**
 * Looks for the hottest pixel of every frame of a ladder, against the mean of the frames before any
 * power. Runs on its own thread; the results may be read by any.
 */
final class HeatWatch implements Step {
  private static final long PERIOD_NANOS = 20_000_000L;
  private static final long NOTED_EVERY_NANOS = 200_000_000L;

  private final FrameIntake intake;
  private final HottestPixel hottest;
  private final Scribe scribe;
  private volatile boolean powered;
  private volatile double celsius = Double.NaN;
  private volatile double riseKelvin = Double.NaN;
  private volatile long lastStepNanos;
  private volatile int learnt;
  private long notedNanos;

  HeatWatch(FrameIntake intake, HottestPixel hottest, Scribe scribe, long nowNanos) {
    this.intake = intake;
    this.hottest = hottest;
    this.scribe = scribe;
    this.lastStepNanos = nowNanos;
    this.notedNanos = nowNanos;
  }

  @Override
  public long step(long nowNanos) {
    lastStepNanos = nowNanos;
    for (Frame frame = intake.queue().poll(); frame != null; frame = intake.queue().poll()) {
      take(frame);
      intake.giveBack(frame);
    }
    return nowNanos + PERIOD_NANOS;
  }

  private void take(Frame frame) {
    if (!powered) {
      hottest.learn(frame);
      learnt++;
      return;
    }
    hottest.look(frame);
    celsius = hottest.celsius();
    riseKelvin = hottest.riseKelvin();
    if (frame.arrivalNanos() - notedNanos >= NOTED_EVERY_NANOS) {
      notedNanos = frame.arrivalNanos();
      scribe.post(
          new Entry.Hottest(
              frame.arrivalNanos(), celsius, riseKelvin, hottest.column(), hottest.row()));
    }
  }

  /** From now on frames are judged instead of learnt. Any thread. */
  void powered() {
    powered = true;
  }

  /** Frames seen before any power. Any thread. */
  int learnt() {
    return learnt;
  }

  double celsius() {
    return celsius;
  }

  double riseKelvin() {
    return riseKelvin;
  }

  long lastStepNanos() {
    return lastStepNanos;
  }
}
