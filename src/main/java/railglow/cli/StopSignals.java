package railglow.cli;

import java.lang.reflect.InvocationHandler;
import java.lang.reflect.Proxy;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import railglow.safety.StopCause;
import railglow.safety.StopLatch;
import railglow.time.MonotonicClock;
import railglow.time.Pause;

/**
 * Turns Ctrl-C, SIGTERM and a closed terminal into a stop request; the run then ends in order and
 * the process with the run's own exit code. A second signal changes nothing: the first one is still
 * being obeyed. A run that does not end within its time is ended all the same, as not proven off.
 */
final class StopSignals {
  private static final Logger LOG = LoggerFactory.getLogger(StopSignals.class);
  private static final long LONGEST_END_NANOS = 60_000_000_000L;
  private static final String[] SIGNALS = {"INT", "TERM", "HUP"};
  private final StopLatch latch;
  private final MonotonicClock clock;
  private volatile boolean ended;
  private boolean timing;

  StopSignals(StopLatch latch, MonotonicClock clock) {
    this.latch = latch;
    this.clock = clock;
  }

  StopSignals install() {
    for (String name : SIGNALS) {
      try {
        handle(name);
      } catch (ReflectiveOperationException | RuntimeException e) {
        LOG.warn("signal {} can't be turned into an orderly stop: {}", name, e.toString());
      }
    }
    return this;
  }

  /** The run has ended; nothing more is to be waited for. */
  void runEnded() {
    ended = true;
  }

  /** The signal class is no part of the language's standard, so it is looked up by its name. */
  private void handle(String name) throws ReflectiveOperationException {
    Class<?> signal = Class.forName("sun.misc.Signal");
    Class<?> handler = Class.forName("sun.misc.SignalHandler");
    InvocationHandler onSignal =
        (proxy, method, arguments) -> {
          if (method.getName().equals("handle")) {
            requested(name);
            return null;
          }
          return method.getName().equals("hashCode") ? name.hashCode() : (Object) (proxy == null);
        };
    Object proxy =
        Proxy.newProxyInstance(
            StopSignals.class.getClassLoader(), new Class<?>[] {handler}, onSignal);
    signal
        .getMethod("handle", signal, handler)
        .invoke(null, signal.getConstructor(String.class).newInstance(name), proxy);
  }

  private synchronized void requested(String name) {
    latch.set(StopCause.OPERATOR_REQUEST, clock.nanos(), "signal " + name);
    if (!timing) {
      timing = true;
      Thread watch = new Thread(this::endAfterAll, "stop-signal");
      watch.setDaemon(true);
      watch.start();
    }
  }

  private void endAfterAll() {
    Pause.nanos(LONGEST_END_NANOS);
    if (!ended) {
      Runtime.getRuntime().halt(ExitCode.NOT_PROVEN_OFF);
    }
  }
}
