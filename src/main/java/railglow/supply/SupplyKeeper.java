package railglow.supply;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.function.BiConsumer;
import railglow.observed.OutputState;
import railglow.safety.Envelope;
import railglow.safety.PermitSlot;
import railglow.safety.Stop;
import railglow.safety.StopCause;
import railglow.safety.StopLatch;
import railglow.time.MonotonicClock;
import railglow.time.Pause;
import railglow.time.Step;
import railglow.time.StepRunner;

/**
 * The sole owner of the supply's output. It starts with an output proven off, serves permits while
 * they last, judges every reading, and after a stop sends nothing but what brings the output off
 * and proves it; then it finishes. While off can't be proven it says so and keeps trying.
 *
 * <p>Only the loop's thread calls {@link #step}; everything else may be called from any thread.
 * Whoever posts a permit or sets the latch should wake the loop.
 */
public final class SupplyKeeper implements Step {
  private static final long RETRY_NANOS = 20_000_000;
  private static final int LAST_LOOKS = 600;
  private static final long DISCHARGE_NANOS = 500_000_000;
  private static final long LAST_LOOK_NANOS = 5_000_000;
  private static final String NO_MEMORY =
      "the program has no memory left: give it more with -Xmx, or a smaller picture";

  private static final long START_PATIENCE_NANOS = 10_000_000_000L;

  private enum Phase {
    FIRST_PROOF,
    CLEARING,
    SECOND_PROOF,
    SETTING,
    LAST_PROOF,
    SERVING
  }

  private final Supply supply;
  private final StopLatch latch;
  private final MonotonicClock clock;
  private final KeeperReports reports;
  private final OffDrive offDrive;
  private final StartOrder startOrder;
  private final PermitService service;
  private final Deque<StartOrder.Action> toDo = new ArrayDeque<>();
  private Phase phase = Phase.FIRST_PROOF;
  private boolean begun;
  private long startedNanos;
  private boolean cleared;
  private boolean timerToDisarm;
  private volatile Stop withoutMemory;
  private long offInDoubtSinceNanos = Long.MIN_VALUE;
  private volatile boolean offWanted;
  private volatile boolean offHandedOver;
  private volatile boolean ready;
  private volatile long lastStepNanos;

  /**
   * @param supply connected and identified; from now on used by this keeper only
   * @param plan what the run needs, already checked against the envelope
   */
  public SupplyKeeper(
      Supply supply,
      OutputPlan plan,
      Envelope envelope,
      PermitSlot permits,
      StopLatch latch,
      SupplyListener listener,
      MonotonicClock clock) {
    this(supply, plan, latch, clock, new KeeperReports(listener, latch), envelope, permits);
  }

  private SupplyKeeper(
      Supply supply,
      OutputPlan plan,
      StopLatch latch,
      MonotonicClock clock,
      KeeperReports reports,
      Envelope envelope,
      PermitSlot permits) {
    this(
        supply,
        plan,
        latch,
        clock,
        reports,
        new PermitService(supply, plan, envelope, permits, latch, reports, clock));
  }

  /** For tests that replace the service. */
  SupplyKeeper(
      Supply supply,
      OutputPlan plan,
      StopLatch latch,
      MonotonicClock clock,
      KeeperReports reports,
      PermitService service) {
    this.supply = supply;
    this.latch = latch;
    this.clock = clock;
    this.reports = reports;
    this.service = service;
    this.offDrive = new OffDrive(supply, reports, clock);
    this.startOrder = new StartOrder(supply, plan);
    this.lastStepNanos = clock.nanos();
    this.withoutMemory = new Stop(StopCause.INTERNAL_FAULT, lastStepNanos, NO_MEMORY);
  }

  /** The loop's thread, not yet started: nothing that is thrown ends it. */
  public StepRunner runner(BiConsumer<String, Throwable> onFailure) {
    return StepRunner.lasting("supply-keeper", this, clock, onFailure);
  }

  /** Whether the start order is done, so that permits are served. */
  public boolean isReady() {
    return ready;
  }

  public OutputState outputState() {
    return reports.state();
  }

  /** Why the output is not proven off; empty when it is. */
  public String doubt() {
    return reports.doubt();
  }

  /** When the loop last began a step: its heartbeat. */
  public long lastStepNanos() {
    return lastStepNanos;
  }

  /** When the last reading was complete; only meaningful once ready. */
  public long lastReadingNanos() {
    return service.lastReadingNanos();
  }

  /** Energy put into the board so far, counted from above. */
  public double joules() {
    return service.joules();
  }

  /**
   * Some loop of the program has run out of memory: stops the run and has off sent without needing
   * any, from any thread.
   */
  public void memoryIsGone() {
    offWanted = true;
    latch.set(withoutMemory);
  }

  /**
   * The last thing before the loop is closed, called by another thread: where off is not proven it
   * is sent once more, by the loop and without needing memory, and the run is stopped. Waits a
   * moment for that, needing no memory itself: who closes may be the first to have none.
   */
  public void sendOffUnlessProven() {
    if (reports.state() != OutputState.PROVEN_OFF) {
      offWanted = true;
      for (int i = 0; i < LAST_LOOKS && !offHandedOver; i++) {
        Pause.nanos(LAST_LOOK_NANOS);
      }
    }
  }

  /** Never throws: whatever fails, off is sent and the loop goes on. */
  @Override
  public long step(long nowNanos) {
    lastStepNanos = nowNanos;
    if (offWanted && !offHandedOver) {
      return lastResort(nowNanos);
    }
    try {
      withoutMemory = new Stop(StopCause.INTERNAL_FAULT, nowNanos, NO_MEMORY);
      return tried(nowNanos);
    } catch (Throwable t) {
      return lastResort(nowNanos);
    }
  }

  private long tried(long nowNanos) {
    boolean stopping = latch.isSet();
    try {
      return stopping ? driveOff() : progress(nowNanos);
    } catch (SupplyException e) {
      boolean refused = e.kind() == SupplyException.Kind.REFUSED;
      failed(refused ? StopCause.SUPPLY_ERROR : StopCause.LINK_LOST, e.getMessage());
    } catch (RuntimeException | Error e) {
      supply.offWithoutMemory();
      failed(StopCause.INTERNAL_FAULT, "the supply's keeper failed: " + e);
    }
    return stopping ? nowNanos + RETRY_NANOS : nowNanos;
  }

  /** Not even an error could be dealt with, most likely for want of memory. */
  private long lastResort(long nowNanos) {
    offHandedOver |= supply.offWithoutMemory();
    try {
      latch.set(withoutMemory);
    } catch (Throwable t) {
      // Whoever is told of the stop had no memory either; latched it is.
      return nowNanos + RETRY_NANOS;
    }
    return nowNanos + RETRY_NANOS;
  }

  private void failed(StopCause cause, String evidence) {
    long now = clock.nanos();
    reports.state(OutputState.UNKNOWN, evidence, now);
    reports.stop(cause, now, evidence);
    if (latch.isSet()) {
      reports.notProven(now);
    }
  }

  private long progress(long nowNanos) throws SupplyException {
    if (!begun) {
      begun = true;
      startedNanos = nowNanos;
    }
    return switch (phase) {
      case FIRST_PROOF -> proveOff(nowNanos, Phase.CLEARING);
      case CLEARING -> work(nowNanos, cleared ? Phase.SECOND_PROOF : Phase.SETTING);
      case SECOND_PROOF -> proveOff(nowNanos, Phase.SETTING);
      case SETTING -> work(nowNanos, Phase.LAST_PROOF);
      case LAST_PROOF -> proveOff(nowNanos, Phase.SERVING);
      case SERVING -> serve(nowNanos);
    };
  }

  private long proveOff(long nowNanos, Phase next) throws SupplyException {
    if (offDrive.attempt(service.setVolts(), latch::isSet)) {
      begin(next);
      return nowNanos;
    }
    if (latch.isSet()) {
      return driveOff();
    }
    if (nowNanos - startedNanos > START_PATIENCE_NANOS) {
      reports.stop(
          StopCause.OUTPUT_NOT_AS_COMMANDED,
          clock.nanos(),
          "the output could not be proven off before the first pulse: " + reports.doubt());
      return nowNanos;
    }
    return nowNanos + RETRY_NANOS;
  }

  private long work(long nowNanos, Phase next) throws SupplyException {
    while (!toDo.isEmpty()) {
      if (toDo.peek().run()) {
        toDo.remove();
      }
      if (latch.isSet()) {
        return driveOff();
      }
    }
    begin(next);
    return nowNanos;
  }

  private void begin(Phase next) {
    phase = next;
    switch (next) {
      case CLEARING -> {
        cleared = startOrder.mustClear(offDrive.lastTrips());
        toDo.addAll(startOrder.clearing(cleared));
      }
      case SETTING -> {
        // Until the last proof: a supply that lies about its switch shows itself with the level.
        reports.state(OutputState.UNKNOWN, "the level is being set", clock.nanos());
        toDo.addAll(startOrder.setting());
      }
      case LAST_PROOF -> service.levelIsSet();
      case SERVING -> {
        timerToDisarm = supply.descriptor().timer().isPresent();
        service.begin(clock.nanos());
        ready = true;
      }
      default -> {}
    }
  }

  private long serve(long nowNanos) throws SupplyException {
    long next = service.serve(nowNanos);
    return latch.isSet() ? driveOff() : next;
  }

  /** A rail's capacitors feed volts and milliamperes for a while after an off that was obeyed. */
  private void warnUnlessDischarging(long nowNanos) {
    if (offInDoubtSinceNanos == Long.MIN_VALUE) {
      offInDoubtSinceNanos = nowNanos;
    }
    if (reports.state() == OutputState.ON || nowNanos - offInDoubtSinceNanos >= DISCHARGE_NANOS) {
      reports.notProven(nowNanos);
    }
  }

  private long driveOff() throws SupplyException {
    ready = false;
    if (offWanted && !offHandedOver) {
      offHandedOver = supply.offWithoutMemory();
    }
    if (!offDrive.attempt(service.setVolts(), () -> false)) {
      warnUnlessDischarging(clock.nanos());
      return clock.nanos() + RETRY_NANOS;
    }
    if (timerToDisarm) {
      timerToDisarm = false;
      supply.disarmTimer();
    }
    return FINISHED;
  }
}
