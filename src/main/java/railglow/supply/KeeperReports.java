package railglow.supply;

import railglow.observed.Edge;
import railglow.observed.OutputState;
import railglow.observed.SupplyReading;
import railglow.safety.Stop;
import railglow.safety.StopCause;
import railglow.safety.StopLatch;

/**
 * What is known of the output, and the way to whoever listens. A listener that throws is a stop and
 * never ends the keeper's loop. Written by the keeper's thread; the state may be read by any.
 */
final class KeeperReports {
  private static final long FIRST_PAUSE_NANOS = 1_000_000_000L;
  private static final long LONGEST_PAUSE_NANOS = 10_000_000_000L;
  private final SupplyListener listener;
  private final StopLatch latch;
  private volatile OutputState state = OutputState.UNKNOWN;
  private volatile String doubt = "the output has not been looked at yet";
  private long lastWarningNanos;

  /** Before the next warning; 0 as long as there was none. */
  private long pauseNanos;

  KeeperReports(SupplyListener listener, StopLatch latch) {
    this.listener = listener;
    this.latch = latch;
  }

  OutputState state() {
    return state;
  }

  String doubt() {
    return doubt;
  }

  void state(OutputState now, String newDoubt, long nowNanos) {
    doubt = newDoubt;
    if (state != now) {
      state = now;
      told(nowNanos, () -> listener.onOutputState(now, nowNanos));
    }
  }

  void reading(SupplyReading reading) {
    told(reading.endNanos(), () -> listener.onReading(reading));
  }

  void edge(Edge edge) {
    told(edge.confirmedNanos(), () -> listener.onEdge(edge));
  }

  /** Latches a stop, or reports it as seen after the first. */
  void stop(StopCause cause, long nowNanos, String evidence) {
    if (!latch.set(cause, nowNanos, evidence)) {
      told(nowNanos, () -> listener.onFurtherBreach(new Stop(cause, nowNanos, evidence)));
    }
  }

  /** Says that off is not proven: at once, then after pauses each twice as long, up to 10 s. */
  void notProven(long nowNanos) {
    boolean first = pauseNanos == 0;
    if (first || nowNanos - lastWarningNanos >= pauseNanos) {
      pauseNanos = first ? FIRST_PAUSE_NANOS : Math.min(2 * pauseNanos, LONGEST_PAUSE_NANOS);
      lastWarningNanos = nowNanos;
      told(
          nowNanos,
          () ->
              listener.onWarning(NotProvenOff.sentence("output NOT proven off", doubt), nowNanos));
    }
  }

  private void told(long nowNanos, Runnable call) {
    try {
      call.run();
    } catch (RuntimeException | Error e) {
      latch.set(StopCause.INTERNAL_FAULT, nowNanos, "a listener of the supply failed: " + e);
    }
  }
}
