package railglow.supply;

import java.util.function.LongSupplier;
import railglow.safety.StopLatch;

/**
 * A companion process that has been started and has not been asked to watch yet: it has touched
 * nothing and will not before its first beat. For one thread.
 */
public final class LaunchedCompanion implements AutoCloseable {
  private final Process process;
  private boolean handedOver;

  LaunchedCompanion(Process process) {
    this.process = process;
  }

  /**
   * The controller's side of it, whose step beats; from then on that side ends it.
   *
   * @param keeperLastStepNanos the keeper's heartbeat: without it there is no beat
   * @throws IllegalStateException the second time
   */
  public CompanionProcess beatingFor(LongSupplier keeperLastStepNanos, StopLatch latch) {
    if (handedOver) {
      throw new IllegalStateException("this companion watches a run already");
    }
    handedOver = true;
    return new CompanionProcess(process, keeperLastStepNanos, latch);
  }

  /** Ends it when nobody has taken it over; else does nothing. */
  @Override
  public void close() {
    if (!handedOver) {
      process.destroy();
    }
  }
}
