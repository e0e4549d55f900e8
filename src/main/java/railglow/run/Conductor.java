package railglow.run;

import java.util.List;
import railglow.pulse.PlannedEdge;
import railglow.pulse.Timeline;
import railglow.safety.OutputPermit;
import railglow.safety.PermitSlot;
import railglow.safety.StopCause;
import railglow.safety.StopLatch;
import railglow.time.Step;

/**
 * Walks the timeline: posts a permit at each edge, renews it while it holds, and latches the end.
 * It touches no device. Runs on the conductor's thread only.
 */
public final class Conductor implements Step {
  /** How long an unrenewed permit lives. */
  static final long PERMIT_LIFE_NANOS = 400_000_000L;

  private static final long RENEW_NANOS = 100_000_000L;
  private final Timeline timeline;
  private final long startNanos;
  private final PermitSlot permits;
  private final StopLatch latch;
  private final Runnable wakeKeeper;
  private int nextEdge;
  private volatile long lastStepNanos;

  /**
   * @param startNanos the monotonic time of offset zero
   * @param wakeKeeper ends the keeper's wait, so that an edge is not late by a polling interval
   */
  public Conductor(
      Timeline timeline,
      long startNanos,
      PermitSlot permits,
      StopLatch latch,
      Runnable wakeKeeper) {
    this.timeline = timeline;
    this.startNanos = startNanos;
    this.permits = permits;
    this.latch = latch;
    this.wakeKeeper = wakeKeeper;
    this.lastStepNanos = startNanos;
  }

  @Override
  public long step(long nowNanos) {
    lastStepNanos = nowNanos;
    if (latch.isSet()) {
      permits.post(OutputPermit.OFF);
      return FINISHED;
    }
    if (nowNanos >= startNanos + timeline.endOffsetNanos()) {
      latch.set(StopCause.PROGRAMME_FINISHED, nowNanos, "every cycle of the sequence was run");
      permits.post(OutputPermit.OFF);
      return FINISHED;
    }
    List<PlannedEdge> edges = timeline.edges();
    boolean changed = false;
    while (nextEdge < edges.size() && nowNanos >= edgeNanos(nextEdge)) {
      nextEdge++;
      changed = true;
    }
    if (nextEdge > 0) {
      PlannedEdge edge = edges.get(nextEdge - 1);
      permits.post(
          new OutputPermit(
              edge.index(), edge.on(), edge.levelVolts(), nowNanos + PERMIT_LIFE_NANOS),
          nowNanos);
    }
    if (changed) {
      wakeKeeper.run();
    }
    long next = nextEdge < edges.size() ? edgeNanos(nextEdge) : startNanos + endOffset();
    return Math.min(next, nowNanos + RENEW_NANOS);
  }

  /** Monotonic time of the last step, for the guard. */
  public long lastStepNanos() {
    return lastStepNanos;
  }

  private long endOffset() {
    return timeline.endOffsetNanos();
  }

  private long edgeNanos(int index) {
    return startNanos + timeline.edges().get(index).offsetNanos();
  }
}
