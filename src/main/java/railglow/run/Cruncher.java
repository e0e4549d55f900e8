package railglow.run;

import railglow.camera.FrameQueue;
import railglow.camera.HottestPixel;
import railglow.journal.Entry;
import railglow.observed.Frame;
import railglow.run.reduction.Reduced;
import railglow.run.reduction.Reduction;
import railglow.time.Step;
import railglow.time.StepRunner;

/**
 * Feeds the reduction with what camera and supply have given, in the order it came, and watches the
 * hottest pixel. Runs on the cruncher's thread only; the numbers it publishes may be read by any.
 */
public final class Cruncher implements Step {
  private static final long IDLE_NANOS = 20_000_000L;
  private static final long HOTTEST_NANOS = 250_000_000L;
  private static final int BATCH = 8;
  private final FrameQueue frames;
  private final SupplyEvents supply;
  private final Reduction reduction;
  private final HottestPixel hottest;
  private final Scribe scribe;
  private final RunWatcher watcher;
  private final long leadInEndsNanos;
  private long nextHottestNanos;
  private volatile double hottestCelsius = Double.NaN;
  private volatile double hottestRiseKelvin = Double.NaN;
  private volatile long lastStepNanos;

  /**
   * @param leadInEndsNanos until then the hottest pixel learns what each pixel is without power
   */
  public Cruncher(
      FrameQueue frames,
      SupplyEvents supply,
      Reduction reduction,
      HottestPixel hottest,
      Scribe scribe,
      RunWatcher watcher,
      long leadInEndsNanos,
      long nowNanos) {
    this.frames = frames;
    this.supply = supply;
    this.reduction = reduction;
    this.hottest = hottest;
    this.scribe = scribe;
    this.watcher = watcher;
    this.leadInEndsNanos = leadInEndsNanos;
    this.lastStepNanos = nowNanos;
  }

  @Override
  public long step(long nowNanos) {
    lastStepNanos = nowNanos;
    takeSupplyEvents();
    for (int i = 0; i < BATCH; i++) {
      Frame frame = frames.poll();
      if (frame == null) {
        return nowNanos + IDLE_NANOS;
      }
      watchHeat(frame);
      watcher.onFrame(frame);
      reduction.onFrame(frame);
    }
    return nowNanos;
  }

  /**
   * Ends its own thread, takes all that is left and ends the reduction. A look in progress is
   * waited for: two threads in one reduction would make a wrong result.
   *
   * @param own the thread that runs this
   * @return null, and nothing is touched, when the thread did not end within the time
   */
  public Reduced finish(StepRunner own, long timeoutNanos) {
    if (!own.end(timeoutNanos)) {
      return null;
    }
    takeSupplyEvents();
    for (Frame frame = frames.poll(); frame != null; frame = frames.poll()) {
      reduction.onFrame(frame);
    }
    return reduction.finish();
  }

  public double hottestCelsius() {
    return hottestCelsius;
  }

  public double hottestRiseKelvin() {
    return hottestRiseKelvin;
  }

  public long lastStepNanos() {
    return lastStepNanos;
  }

  private void takeSupplyEvents() {
    for (Entry event = supply.poll(); event != null; event = supply.poll()) {
      if (event instanceof Entry.Reading reading) {
        reduction.onReading(reading.reading());
      } else if (event instanceof Entry.EdgeMade edge) {
        reduction.onEdge(edge.edge());
      } else if (event instanceof Entry.ContactSwung swung) {
        reduction.onContactSwung(swung);
      }
    }
  }

  private void watchHeat(Frame frame) {
    if (frame.arrivalNanos() < leadInEndsNanos) {
      hottest.learn(frame);
      return;
    }
    hottest.look(frame);
    hottestCelsius = hottest.celsius();
    hottestRiseKelvin = hottest.riseKelvin();
    if (frame.arrivalNanos() >= nextHottestNanos) {
      nextHottestNanos = frame.arrivalNanos() + HOTTEST_NANOS;
      scribe.post(
          new Entry.Hottest(
              frame.arrivalNanos(),
              hottestCelsius,
              hottestRiseKelvin,
              hottest.column(),
              hottest.row()));
    }
  }
}
