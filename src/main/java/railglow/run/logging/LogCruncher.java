package railglow.run.logging;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
import railglow.camera.FrameQueue;
import railglow.camera.HottestPixel;
import railglow.journal.Entry;
import railglow.observed.Frame;
import railglow.observed.SupplyReading;
import railglow.run.Scribe;
import railglow.run.SupplyEvents;
import railglow.time.Step;
import railglow.time.StepRunner;

/**
 * Follows the places in each frame, watches the hottest pixel and the conditions, and hands frames
 * on to be written. While a start condition is waited for it keeps only the newest frames. Runs on
 * its own thread only; the numbers it publishes may be read by any.
 */
final class LogCruncher implements Step {
  private static final long IDLE_NANOS = 20_000_000L;
  private static final long HOTTEST_NANOS = 250_000_000L;
  private static final int BATCH = 8;

  /** What a condition does when it comes; called on the cruncher's thread. */
  interface Signals {
    void onStart(long nanos, String why);

    void onStop(long nanos, String why);
  }

  private final FrameQueue frames;
  private final SupplyEvents supply;
  private final FollowerMaker followers;
  private final HottestPixel hottest;
  private final Scribe scribe;
  private final LogWatcher watcher;
  private final Signals signals;
  private final Consumer<Frame> giveBack;
  private final LogPlan plan;
  private final long leadInEndsNanos;
  private final ArrayDeque<Frame> before = new ArrayDeque<>();
  private final List<Trigger> marking = new ArrayList<>();
  private final Optional<Trigger> starting;
  private final Optional<Trigger> stopping;
  private FrameFollower follower;
  private long nextHottestNanos;
  private volatile Entry.Followed newest;
  private volatile double hottestCelsius = Double.NaN;
  private volatile double hottestRiseKelvin = Double.NaN;
  private volatile long framesRecorded;
  private final AtomicInteger markers = new AtomicInteger();
  private volatile long lastStepNanos;

  /** Makes the follower once it is known when its baseline ends. */
  interface FollowerMaker {
    FrameFollower make(long baselineEndsNanos);
  }

  LogCruncher(
      LogPlan plan,
      FrameQueue frames,
      SupplyEvents supply,
      FollowerMaker followers,
      HottestPixel hottest,
      Scribe scribe,
      LogWatcher watcher,
      Signals signals,
      Consumer<Frame> giveBack,
      long startNanos) {
    this.plan = plan;
    this.frames = frames;
    this.supply = supply;
    this.followers = followers;
    this.hottest = hottest;
    this.scribe = scribe;
    this.watcher = watcher;
    this.signals = signals;
    this.giveBack = giveBack;
    this.leadInEndsNanos = startNanos + Math.round(plan.leadInSeconds() * 1e9);
    this.starting = plan.startOn().map(Trigger::new);
    this.stopping = plan.stopOn().map(Trigger::new);
    plan.markOn().forEach(condition -> marking.add(new Trigger(condition)));
    this.lastStepNanos = startNanos;
    if (starting.isEmpty()) {
      follower = followers.make(leadInEndsNanos);
    }
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
      take(frame);
    }
    return nowNanos;
  }

  /**
   * Ends its own thread and takes all that is left.
   *
   * @param own the thread that runs this
   * @return null where none was made, and when the thread did not end within the time: what it
   *     holds is its own then
   */
  FrameFollower finish(StepRunner own, long timeoutNanos) {
    if (!own.end(timeoutNanos)) {
      return null;
    }
    takeSupplyEvents();
    for (Frame frame = frames.poll(); frame != null; frame = frames.poll()) {
      take(frame);
    }
    return follower;
  }

  private void take(Frame frame) {
    watchHeat(frame);
    watcher.onFrame(frame);
    if (follower != null) {
      record(frame);
      return;
    }
    before.add(frame);
    long keptNanos = Math.round(plan.beforeSeconds() * 1e9);
    while (frame.arrivalNanos() - before.peek().arrivalNanos() > keptNanos) {
      giveBack.accept(before.remove());
    }
  }

  private void record(Frame frame) {
    Entry.Followed followed = follower.onFrame(frame);
    newest = followed;
    framesRecorded++;
    scribe.post(followed);
    scribe.store(frame);
    for (int place = 0; place < plan.places().size(); place++) {
      // a place's condition looks at its hottest pixel
      judge(followed.nanos(), Condition.Watched.HOTTEST, place, followed.high()[place]);
      judge(followed.nanos(), Condition.Watched.RISE, place, followed.riseHigh()[place]);
    }
  }

  private void judge(long nanos, Condition.Watched watched, int place, double value) {
    for (Trigger trigger : marking) {
      if (watches(trigger, watched, place)) {
        trigger.onValue(nanos, value).ifPresent(why -> mark(nanos, why));
      }
    }
    starting
        .filter(trigger -> follower == null && watches(trigger, watched, place))
        .flatMap(trigger -> trigger.onValue(nanos, value))
        .ifPresent(why -> begin(nanos, why));
    stopping
        .filter(trigger -> follower != null && watches(trigger, watched, place))
        .flatMap(trigger -> trigger.onValue(nanos, value))
        .ifPresent(why -> signals.onStop(nanos, why));
  }

  private static boolean watches(Trigger trigger, Condition.Watched watched, int place) {
    return trigger.condition().watched() == watched && trigger.condition().place() == place;
  }

  private void mark(long nanos, String why) {
    markers.incrementAndGet();
    scribe.post(new Entry.Marker(nanos, why, Entry.Marker.Origin.CONDITION));
    watcher.onMessage("Mark       " + why);
  }

  private void begin(long nanos, String why) {
    scribe.post(new Entry.Marker(nanos, why, Entry.Marker.Origin.START));
    follower = followers.make(nanos);
    signals.onStart(nanos, why);
    while (!before.isEmpty()) {
      record(before.remove());
    }
  }

  /** Sets a mark by hand; any thread. */
  void markByHand(long nanos, String text) {
    markers.incrementAndGet();
    scribe.post(new Entry.Marker(nanos, text, Entry.Marker.Origin.TYPED));
  }

  private void takeSupplyEvents() {
    for (Entry event = supply.poll(); event != null; event = supply.poll()) {
      if (event instanceof Entry.Reading taken) {
        SupplyReading reading = taken.reading();
        long middle = reading.startNanos() + (reading.endNanos() - reading.startNanos()) / 2;
        judge(middle, Condition.Watched.VOLTAGE, -1, reading.volts());
        judge(middle, Condition.Watched.CURRENT, -1, reading.amperes());
        judge(middle, Condition.Watched.POWER, -1, reading.watts());
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
    judge(frame.arrivalNanos(), Condition.Watched.HOTTEST, -1, hottestCelsius);
    judge(frame.arrivalNanos(), Condition.Watched.RISE, -1, hottestRiseKelvin);
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

  /** Null before the first recorded frame; any thread. */
  Entry.Followed newest() {
    return newest;
  }

  long framesRecorded() {
    return framesRecorded;
  }

  int markers() {
    return markers.get();
  }

  double hottestCelsius() {
    return hottestCelsius;
  }

  double hottestRiseKelvin() {
    return hottestRiseKelvin;
  }

  long lastStepNanos() {
    return lastStepNanos;
  }
}
