package railglow.run.handsfree;

import railglow.safety.OutputPermit;
import railglow.safety.PermitSlot;
import railglow.safety.StopLatch;
import railglow.time.Step;

/**
 * Holds the sensing level: renews one permit until the latch is set. It touches no device. Runs on
 * its own thread only.
 */
final class SensingConductor implements Step {
  private static final long PERMIT_LIFE_NANOS = 400_000_000L;
  private static final long RENEW_NANOS = 100_000_000L;
  private final double levelVolts;
  private final PermitSlot permits;
  private final StopLatch latch;
  private volatile long lastStepNanos;

  SensingConductor(double levelVolts, PermitSlot permits, StopLatch latch, long nowNanos) {
    this.levelVolts = levelVolts;
    this.permits = permits;
    this.latch = latch;
    this.lastStepNanos = nowNanos;
  }

  @Override
  public long step(long nowNanos) {
    lastStepNanos = nowNanos;
    if (latch.isSet()) {
      permits.post(OutputPermit.OFF);
      return FINISHED;
    }
    permits.post(new OutputPermit(0, true, levelVolts, nowNanos + PERMIT_LIFE_NANOS), nowNanos);
    return nowNanos + RENEW_NANOS;
  }

  long lastStepNanos() {
    return lastStepNanos;
  }
}
