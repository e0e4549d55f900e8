package railglow.run.pulsed;

import java.io.IOException;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.LongSupplier;
import railglow.safety.StopCause;
import railglow.safety.StopLatch;
import railglow.supply.CompanionProcess;
import railglow.time.MonotonicClock;
import railglow.time.StepRunner;

/** The companion of one run, where the bench has one: starts it, beats for it, lets it go. */
public final class CompanionPost {
  private final Optional<CompanionProcess> companion;
  private final Optional<StepRunner> runner;

  private CompanionPost(Optional<CompanionProcess> companion, Optional<StepRunner> runner) {
    this.companion = companion;
    this.runner = runner;
  }

  /** Starts it; when that fails the latch is set and there is none. */
  public static CompanionPost start(
      CompanionStarter starter,
      LongSupplier keeperLastStepNanos,
      StopLatch latch,
      MonotonicClock clock,
      BiConsumer<String, Throwable> onFailure) {
    try {
      Optional<CompanionProcess> companion = starter.start(keeperLastStepNanos);
      return new CompanionPost(
          companion, companion.map(c -> new StepRunner("companion", c, clock, onFailure).start()));
    } catch (IOException e) {
      latch.set(StopCause.COMPANION_LOST, clock.nanos(), e.getMessage());
      return new CompanionPost(Optional.empty(), Optional.empty());
    }
  }

  /** Whether it watches, or there is none. */
  public boolean isReady() {
    return companion.map(CompanionProcess::isReady).orElse(true);
  }

  /**
   * @param provenOff only then the companion may leave the supply alone
   */
  public void end(boolean provenOff) {
    runner.ifPresent(StepRunner::close);
    companion.ifPresent(
        process -> {
          if (provenOff) {
            process.goodbye();
          }
          process.close();
        });
  }
}
