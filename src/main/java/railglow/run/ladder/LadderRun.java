package railglow.run.ladder;

import java.util.List;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import railglow.board.ladder.LadderStep;
import railglow.observed.OutputState;
import railglow.run.RunEnding;
import railglow.run.pulsed.CompanionPost;
import railglow.run.pulsed.CompanionStarter;
import railglow.safety.Envelope;
import railglow.safety.PermitSlot;
import railglow.safety.Stop;
import railglow.safety.StopCause;
import railglow.safety.StopLatch;
import railglow.supply.OutputPlan;
import railglow.supply.Supply;
import railglow.supply.SupplyKeeper;
import railglow.time.MonotonicClock;
import railglow.time.Pause;
import railglow.time.Step;
import railglow.time.StepRunner;

/** One ladder from the first proof of "off" to the last. Used once, by one thread. */
public final class LadderRun {
  private static final Logger LOG = LoggerFactory.getLogger(LadderRun.class);
  private static final long SECOND = 1_000_000_000L;
  private static final long WATCH_NANOS = SECOND / 20;
  private static final long READY_PATIENCE_NANOS = 20 * SECOND;
  private static final long OFF_PATIENCE_NANOS = 15 * SECOND;
  private static final long LOOP_PATIENCE_NANOS = 3 * SECOND;

  /**
   * What is left when it is over.
   *
   * @param departure why it ended before the last level; empty when no step departed
   */
  public record Outcome(RunEnding ending, List<LadderStep> steps, String departure) {}

  private final Envelope envelope;
  private final StopLatch latch;
  private final MonotonicClock clock;
  private final CompanionStarter companionStarter;
  private final SupplyKeeper keeper;
  private final StepRunner keeperRunner;
  private final LadderStepper stepper;

  /**
   * @param supply connected and identified; closed by the caller
   * @param leadOhms taken off each voltage; 0 when sensed at the board
   */
  public LadderRun(
      Supply supply,
      OutputPlan outputPlan,
      Envelope envelope,
      LadderPlan plan,
      double leadOhms,
      StopLatch latch,
      MonotonicClock clock,
      CompanionStarter companionStarter) {
    this.envelope = envelope;
    this.latch = latch;
    this.clock = clock;
    this.companionStarter = companionStarter;
    PermitSlot permits = new PermitSlot();
    this.stepper = new LadderStepper(plan, leadOhms, permits, latch, this::wakeKeeper);
    this.keeper = new SupplyKeeper(supply, outputPlan, envelope, permits, latch, stepper, clock);
    this.keeperRunner = runner("supply-keeper", keeper);
  }

  private void wakeKeeper() {
    keeperRunner.wake();
  }

  /** Runs to the end, whatever it is; never leaves without having tried to prove the output off. */
  public Outcome run() {
    latch.onSet(keeperRunner::wake);
    keeperRunner.start();
    CompanionPost companion =
        CompanionPost.start(companionStarter, keeper::lastStepNanos, latch, clock, this::onFailure);
    try {
      awaitReady(companion);
      if (!latch.isSet()) {
        climb();
      }
    } catch (RuntimeException | Error e) {
      LOG.error("the ladder failed", e);
      latch.set(StopCause.INTERNAL_FAULT, clock.nanos(), "the ladder could not go on: " + e);
    } finally {
      keeperRunner.awaitEnd(OFF_PATIENCE_NANOS);
      companion.end(keeper.outputState() == OutputState.PROVEN_OFF);
      keeperRunner.close();
    }
    Stop stop = latch.stop().orElseThrow();
    return new Outcome(
        new RunEnding(stop, keeper.outputState(), keeper.doubt()),
        stepper.steps(),
        stepper.departure());
  }

  private void awaitReady(CompanionPost companion) {
    long begin = clock.nanos();
    while (!latch.isSet() && !(companion.isReady() && keeper.isReady())) {
      if (clock.nanos() - begin > READY_PATIENCE_NANOS) {
        latch.set(
            StopCause.SUPPLY_ERROR,
            clock.nanos(),
            "supply and companion were not ready within 20 s");
      }
      Pause.nanos(WATCH_NANOS);
    }
  }

  private void climb() {
    long begin = clock.nanos();
    StepRunner stepperRunner = runner("ladder-stepper", stepper);
    stepperRunner.start();
    while (!latch.isSet()) {
      watch(begin);
      Pause.nanos(WATCH_NANOS);
    }
    stepperRunner.close();
  }

  private void watch(long beginNanos) {
    long now = clock.nanos();
    stale("supply-keeper", Math.max(beginNanos, keeper.lastStepNanos()), now);
    stale("ladder-stepper", Math.max(beginNanos, stepper.lastStepNanos()), now);
    double age = (now - Math.max(beginNanos, keeper.lastReadingNanos())) / (double) SECOND;
    if (age > envelope.maxReadingAgeSeconds().value()) {
      latch.set(StopCause.READINGS_STALE, now, "no reading of the supply came for too long");
    }
  }

  private void stale(String loop, long lastNanos, long nowNanos) {
    if (nowNanos - lastNanos > LOOP_PATIENCE_NANOS) {
      latch.set(StopCause.LOOP_STALLED, nowNanos, "the " + loop + " made no step for 3 s");
    }
  }

  private StepRunner runner(String name, Step step) {
    return new StepRunner(name, step, clock, this::onFailure);
  }

  private void onFailure(String name, Throwable failure) {
    LOG.error("the {} thread failed", name, failure);
    latch.set(
        StopCause.INTERNAL_FAULT, clock.nanos(), "the " + name + " thread failed: " + failure);
  }
}
