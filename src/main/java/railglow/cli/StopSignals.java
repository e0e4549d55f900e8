package railglow.cli;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import railglow.safety.StopCause;
import railglow.safety.StopLatch;
import railglow.time.MonotonicClock;

/**
 * Turns Ctrl-C, SIGTERM and a closed terminal into a stop request and holds the process until the
 * run has ended in order. A second signal changes nothing: the first one is still being obeyed.
 */
final class StopSignals {
  private static final long LONGEST_END_SECONDS = 40;
  private final CountDownLatch ended = new CountDownLatch(1);
  private final StopLatch latch;
  private final MonotonicClock clock;
  private volatile int exitCode = ExitCode.NOT_PROVEN_OFF;
  private volatile boolean armed = true;

  StopSignals(StopLatch latch, MonotonicClock clock) {
    this.latch = latch;
    this.clock = clock;
  }

  StopSignals install() {
    Runtime.getRuntime().addShutdownHook(new Thread(this::onSignal, "stop-signal"));
    return this;
  }

  /** The run has ended with this exit code; a signal still waiting lets the process go. */
  void runEnded(int code) {
    exitCode = code;
    armed = false;
    ended.countDown();
  }

  private void onSignal() {
    if (!armed) {
      return;
    }
    latch.set(
        StopCause.OPERATOR_REQUEST, clock.nanos(), "the operator or the system asked to stop");
    try {
      if (!ended.await(LONGEST_END_SECONDS, TimeUnit.SECONDS)) {
        exitCode = ExitCode.NOT_PROVEN_OFF;
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    Runtime.getRuntime().halt(exitCode);
  }
}
