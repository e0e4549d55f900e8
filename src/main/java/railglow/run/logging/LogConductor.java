package railglow.run.logging;

import java.util.Locale;
import railglow.safety.OutputPermit;
import railglow.safety.PermitSlot;
import railglow.safety.StopCause;
import railglow.safety.StopLatch;
import railglow.time.Step;

/**
 * Keeps a log's time: after the lead-in it renews one permit while the output is to be on, and it
 * latches the end. It touches no device. {@link #step} runs on its own thread only; {@link #begun}
 * may be called from any.
 */
final class LogConductor implements Step {
  private static final long PERMIT_LIFE_NANOS = 400_000_000L;
  private static final long RENEW_NANOS = 100_000_000L;
  private final LogPlan plan;
  private final PermitSlot permits;
  private final StopLatch latch;
  private final Runnable wakeKeeper;
  private final long onNanos;
  private final long waitEndsNanos;
  private volatile long endNanos;
  private volatile long lastStepNanos;
  private boolean on;

  LogConductor(
      LogPlan plan, long startNanos, PermitSlot permits, StopLatch latch, Runnable wakeKeeper) {
    this.plan = plan;
    this.permits = permits;
    this.latch = latch;
    this.wakeKeeper = wakeKeeper;
    this.onNanos = startNanos + nanos(plan.leadInSeconds());
    boolean waits = plan.startOn().isPresent();
    this.waitEndsNanos = waits ? later(onNanos, plan.waitSeconds()) : Long.MAX_VALUE;
    this.endNanos = waits ? Long.MAX_VALUE : later(onNanos, plan.longestSeconds());
    this.lastStepNanos = startNanos;
  }

  /** The start condition came. */
  void begun(long nowNanos) {
    endNanos = later(nowNanos, plan.longestSeconds());
  }

  @Override
  public long step(long nowNanos) {
    lastStepNanos = nowNanos;
    if (latch.isSet()) {
      permits.post(OutputPermit.OFF);
      return FINISHED;
    }
    if (endNanos == Long.MAX_VALUE && nowNanos >= waitEndsNanos) {
      return end(nowNanos, "the start condition did not come", plan.waitSeconds());
    }
    if (nowNanos >= endNanos) {
      return end(nowNanos, "the time was over", plan.longestSeconds());
    }
    if (plan.injects() && nowNanos >= onNanos) {
      permits.post(
          new OutputPermit(0, true, plan.levelVolts(), nowNanos + PERMIT_LIFE_NANOS), nowNanos);
      if (!on) {
        on = true;
        wakeKeeper.run();
      }
    }
    long next = nowNanos + RENEW_NANOS;
    return Math.min(next, nowNanos < onNanos ? Math.min(onNanos, endNanos) : endNanos);
  }

  long lastStepNanos() {
    return lastStepNanos;
  }

  private long end(long nowNanos, String what, double seconds) {
    latch.set(
        StopCause.PROGRAMME_FINISHED,
        nowNanos,
        String.format(Locale.ROOT, "%s, %.1f s", what, seconds));
    permits.post(OutputPermit.OFF);
    return FINISHED;
  }

  private static long later(long from, double seconds) {
    return seconds < 1e9 ? from + nanos(seconds) : Long.MAX_VALUE;
  }

  private static long nanos(double seconds) {
    return Math.round(seconds * 1e9);
  }
}
