package railglow.cli;

import railglow.safety.Stop;
import railglow.safety.StopCause;
import railglow.safety.StopLatch;
import railglow.time.MonotonicClock;

/**
 * What can stop a hands-free session, led to the latch of whatever is going on. Every wait and
 * every run has a latch of its own; a signal reaches the one that is current and all that follow.
 * Called from several threads.
 */
final class TouchStops {
  private final MonotonicClock clock;
  private final StopLatch signal = new StopLatch();
  private StopLatch current = new StopLatch();
  private boolean sensing;
  private String endWanted = "";

  TouchStops(MonotonicClock clock) {
    this.clock = clock;
    signal.onSet(this::signalled);
  }

  /** Set by signals and by STOP, once for the whole session. */
  StopLatch signal() {
    return signal;
  }

  /** STOP, from another thread, by whom. */
  void request(String who) {
    signal.set(StopCause.OPERATOR_REQUEST, clock.nanos(), who);
  }

  /** A new latch for what comes next; set already when the session shall end. */
  synchronized StopLatch next(boolean isSensing) {
    current = new StopLatch();
    sensing = isSensing;
    signalled();
    if (isEndWanted()) {
      current.set(StopCause.OPERATOR_REQUEST, clock.nanos(), endWanted);
    }
    return current;
  }

  /** A key or a pedal: starts a run while sensing, ends the touch while a run pulses. */
  synchronized void press() {
    if (sensing) {
      current.set(StopCause.PROGRAMME_FINISHED, clock.nanos(), "the operator's key");
    } else {
      current.set(StopCause.OPERATOR_REQUEST, clock.nanos(), "the operator's key");
    }
  }

  /** Nothing more will come: the session ends in order. */
  synchronized void end(String why) {
    endWanted = why;
    current.set(StopCause.OPERATOR_REQUEST, clock.nanos(), why);
  }

  synchronized boolean isEndWanted() {
    return !endWanted.isEmpty();
  }

  private synchronized void signalled() {
    signal
        .stop()
        .ifPresent((Stop stop) -> current.set(stop.cause(), clock.nanos(), stop.evidence()));
  }
}
