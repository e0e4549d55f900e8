package railglow.run.logging;

import java.util.Optional;
import java.util.function.BiConsumer;
import railglow.observed.OutputState;
import railglow.run.Heartbeat;
import railglow.run.SupplyEvents;
import railglow.run.pulsed.CompanionPost;
import railglow.run.pulsed.CompanionStarter;
import railglow.safety.Envelope;
import railglow.safety.PermitSlot;
import railglow.safety.StopLatch;
import railglow.supply.OutputPlan;
import railglow.supply.ScpiSupply;
import railglow.supply.Supply;
import railglow.supply.SupplyKeeper;
import railglow.supply.SupplyWatch;
import railglow.time.MonotonicClock;
import railglow.time.StepRunner;

/** What reads the supply during a log: a keeper that also drives it, a watch, or nothing. */
abstract sealed class SupplyPost {
  private static final long LOOP_PATIENCE_NANOS = 3_000_000_000L;
  private static final long OFF_PATIENCE_NANOS = 15_000_000_000L;

  /** Begins reading; the output is proven off first where it is ours. */
  abstract void start(BiConsumer<String, Throwable> onFailure);

  abstract boolean isReady();

  /** End of the newest reading for the guard; now where nothing can be too old. */
  abstract long lastReadingNanos(long nowNanos);

  abstract Optional<Heartbeat> heartbeat();

  abstract void wake();

  /** Null where the output is not ours. */
  abstract OutputState output();

  abstract String doubt();

  /** After the latch is set: waits for the proof where the output is ours. */
  abstract void awaitOff();

  abstract void close();

  static SupplyPost none() {
    return new None();
  }

  /** What an injecting log needs of its supply. */
  record Injection(
      Supply supply, OutputPlan plan, Envelope envelope, CompanionStarter companionStarter) {}

  static SupplyPost injecting(
      Injection injection,
      PermitSlot permits,
      StopLatch latch,
      SupplyEvents events,
      MonotonicClock clock) {
    return new Injecting(injection, permits, latch, events, clock);
  }

  static SupplyPost watching(ScpiSupply supply, SupplyEvents events, MonotonicClock clock) {
    return new Watching(supply, events, clock);
  }

  private static final class Injecting extends SupplyPost {
    private final Injection injection;
    private final StopLatch latch;
    private final MonotonicClock clock;
    private final SupplyKeeper keeper;
    private StepRunner runner;
    private CompanionPost companion;

    private Injecting(
        Injection injection,
        PermitSlot permits,
        StopLatch latch,
        SupplyEvents events,
        MonotonicClock clock) {
      this.injection = injection;
      this.latch = latch;
      this.clock = clock;
      this.keeper =
          new SupplyKeeper(
              injection.supply(),
              injection.plan(),
              injection.envelope(),
              permits,
              latch,
              events,
              clock);
    }

    @Override
    void start(BiConsumer<String, Throwable> onFailure) {
      runner = keeper.runner(onFailure);
      latch.onSet(runner::wake);
      runner.start();
      companion =
          CompanionPost.start(
              injection.companionStarter(), keeper::lastStepNanos, latch, clock, onFailure);
    }

    @Override
    boolean isReady() {
      return companion.isReady() && keeper.isReady();
    }

    @Override
    long lastReadingNanos(long nowNanos) {
      return keeper.lastReadingNanos();
    }

    @Override
    Optional<Heartbeat> heartbeat() {
      return Optional.of(
          new Heartbeat("supply-keeper", keeper::lastStepNanos, LOOP_PATIENCE_NANOS, () -> true));
    }

    @Override
    void wake() {
      runner.wake();
    }

    @Override
    OutputState output() {
      return keeper.outputState();
    }

    @Override
    String doubt() {
      return keeper.doubt();
    }

    @Override
    void awaitOff() {
      runner.awaitEnd(OFF_PATIENCE_NANOS);
    }

    @Override
    void close() {
      companion.end(keeper.outputState() == OutputState.PROVEN_OFF);
      runner.close();
    }
  }

  private static final class Watching extends SupplyPost {
    private final SupplyWatch watch;
    private final MonotonicClock clock;
    private StepRunner runner;

    private Watching(ScpiSupply supply, SupplyEvents events, MonotonicClock clock) {
      this.watch = new SupplyWatch(supply, events, clock);
      this.clock = clock;
    }

    @Override
    void start(BiConsumer<String, Throwable> onFailure) {
      runner = new StepRunner("supply-watch", watch, clock, onFailure).start();
    }

    @Override
    boolean isReady() {
      return watch.lastReadingNanos() != Long.MIN_VALUE;
    }

    @Override
    long lastReadingNanos(long nowNanos) {
      return nowNanos; // it can't be switched off for being late
    }

    @Override
    Optional<Heartbeat> heartbeat() {
      return Optional.empty();
    }

    @Override
    void wake() {}

    @Override
    OutputState output() {
      return null;
    }

    @Override
    String doubt() {
      return "";
    }

    @Override
    void awaitOff() {}

    @Override
    void close() {
      runner.close();
    }
  }

  private static final class None extends SupplyPost {
    @Override
    void start(BiConsumer<String, Throwable> onFailure) {}

    @Override
    boolean isReady() {
      return true;
    }

    @Override
    long lastReadingNanos(long nowNanos) {
      return nowNanos;
    }

    @Override
    Optional<Heartbeat> heartbeat() {
      return Optional.empty();
    }

    @Override
    void wake() {}

    @Override
    OutputState output() {
      return null;
    }

    @Override
    String doubt() {
      return "";
    }

    @Override
    void awaitOff() {}

    @Override
    void close() {}
  }
}
