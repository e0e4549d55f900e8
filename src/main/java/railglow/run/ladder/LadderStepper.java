package railglow.run.ladder;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Consumer;
import railglow.board.ladder.LadderStep;
import railglow.board.ladder.StepCheck;
import railglow.journal.Entry;
import railglow.observed.Edge;
import railglow.observed.OutputState;
import railglow.observed.SupplyReading;
import railglow.safety.OutputPermit;
import railglow.safety.PermitSlot;
import railglow.safety.StopCause;
import railglow.safety.StopLatch;
import railglow.supply.SupplyListener;
import railglow.time.Step;

/**
 * Walks up the levels: posts and renews the permit of each, gathers its settled readings, and
 * latches the end after the last level or at the first step that departs. It touches no device.
 *
 * <p>{@link #step} belongs to one thread; the listener's methods to the keeper's.
 */
public final class LadderStepper implements Step, SupplyListener {
  private static final long PERMIT_LIFE_NANOS = 400_000_000L;

  /** After this the latch brings the output off. */
  private static final long OFF_PATIENCE_NANOS = 500_000_000L;

  private static final long RENEW_NANOS = 50_000_000L;

  /** A level without enough readings is held on, but not for ever. */
  private static final int MOST_DWELLS = 5;

  private final LadderPlan plan;
  private final double leadOhms;
  private final ReadBack readBack;
  private final PermitSlot permits;
  private final StopLatch latch;
  private final Runnable wakeKeeper;
  private final Consumer<Entry> record;
  private final Queue<SupplyReading> arrived = new ConcurrentLinkedQueue<>();
  private final List<LadderStep> steps = new CopyOnWriteArrayList<>();
  private volatile String departure = "";
  private volatile long confirmedNanos;
  private volatile int confirmedLevel = -1;
  private volatile long lastStepNanos;
  private volatile boolean off;
  private int level = -1;
  private StopCause lastCause;
  private String lastEvidence = "";
  private long switchedOffNanos;
  private long levelNanos;
  private StepReadings readings;

  /**
   * @param leadOhms taken off each voltage; 0 when sensed at the board
   * @param readBack how well the supply reads back
   * @param record takes a line for the journal when a level is done
   */
  public LadderStepper(
      LadderPlan plan,
      double leadOhms,
      ReadBack readBack,
      PermitSlot permits,
      StopLatch latch,
      Runnable wakeKeeper,
      Consumer<Entry> record) {
    this.plan = plan;
    this.leadOhms = leadOhms;
    this.readBack = readBack;
    this.permits = permits;
    this.latch = latch;
    this.wakeKeeper = wakeKeeper;
    this.record = record;
  }

  /** Its heart is expected to beat from now on; before its loop starts. */
  public void expectFrom(long nowNanos) {
    lastStepNanos = nowNanos;
  }

  @Override
  public long step(long nowNanos) {
    lastStepNanos = nowNanos;
    if (latch.isSet()) {
      permits.post(OutputPermit.OFF);
      return FINISHED;
    }
    if (lastCause != null) {
      boolean over = off || nowNanos - switchedOffNanos >= OFF_PATIENCE_NANOS;
      if (over) {
        latch.set(lastCause, nowNanos, lastEvidence);
      }
      return over ? FINISHED : nowNanos + RENEW_NANOS;
    }
    if (level < 0) {
      begin(0, nowNanos);
    }
    take();
    long held = nowNanos - levelNanos;
    boolean over = held >= nanos(plan.dwellSeconds());
    if (over && readings.isEnough()) {
      LadderStep done = readings.step();
      Optional<String> departs = StepCheck.departure(new ArrayList<>(steps), done);
      steps.add(done);
      record.accept(new Entry.Note(nowNanos, StepNote.text(level, readings.size())));
      if (departs.isPresent()) {
        departure = departs.get();
        return endAtOnce(nowNanos, departure);
      }
      if (done.supplyLimits()) {
        return switchOff(
            nowNanos,
            StopCause.SURE_ENOUGH,
            "the supply is at its current limit; higher levels would change nothing");
      }
      if (level + 1 == plan.levelsVolts().size()) {
        return switchOff(nowNanos, StopCause.PROGRAMME_FINISHED, "every level was held");
      }
      begin(level + 1, nowNanos);
    } else if (held >= MOST_DWELLS * nanos(plan.dwellSeconds())) {
      latch.set(StopCause.READINGS_STALE, nowNanos, "no two settled readings came at one level");
      return FINISHED;
    }
    renew(nowNanos);
    return nowNanos + RENEW_NANOS;
  }

  private void begin(int next, long nowNanos) {
    level = next;
    levelNanos = nowNanos;
    readings = new StepReadings(leadOhms, readBack);
    renew(nowNanos);
    wakeKeeper.run();
  }

  private void renew(long nowNanos) {
    permits.post(
        new OutputPermit(level, true, plan.levelsVolts().get(level), nowNanos + PERMIT_LIFE_NANOS),
        nowNanos);
  }

  /** The latch is the shortest way to off there is. */
  private long endAtOnce(long nowNanos, String evidence) {
    latch.set(StopCause.SURE_ENOUGH, nowNanos, evidence);
    permits.post(OutputPermit.OFF);
    wakeKeeper.run();
    return FINISHED;
  }

  /** Nothing is wrong: the output goes off as after any pulse, and then it is over. */
  private long switchOff(long nowNanos, StopCause cause, String evidence) {
    lastCause = cause;
    lastEvidence = evidence;
    switchedOffNanos = nowNanos;
    permits.post(OutputPermit.OFF);
    wakeKeeper.run();
    return nowNanos + RENEW_NANOS;
  }

  /** Only readings begun after the level was confirmed and had settled count. */
  private void take() {
    for (SupplyReading reading = arrived.poll(); reading != null; reading = arrived.poll()) {
      if (confirmedLevel == level
          && StepReadings.counts(reading, confirmedNanos, plan.settleSeconds())) {
        readings.add(reading);
      }
    }
  }

  private static long nanos(double seconds) {
    return Math.round(seconds * 1e9);
  }

  @Override
  public void onReading(SupplyReading reading) {
    arrived.add(reading);
  }

  @Override
  public void onEdge(Edge edge) {
    if (edge.on()) {
      confirmedNanos = edge.confirmedNanos();
      confirmedLevel = edge.index();
    }
    off = !edge.on();
  }

  @Override
  public void onOutputState(OutputState state, long nowNanos) {}

  /** The steps done so far. Any thread. */
  public List<LadderStep> steps() {
    return List.copyOf(steps);
  }

  /** Why it ended before the last level; empty when no step departed. Any thread. */
  public String departure() {
    return departure;
  }

  /** Monotonic time of the last step. Any thread. */
  public long lastStepNanos() {
    return lastStepNanos;
  }
}
