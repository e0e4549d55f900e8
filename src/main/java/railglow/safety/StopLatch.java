package railglow.safety;

import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;

/**
 * Remembers the first stop, for good. There is no way to clear it: a new run is a new latch.
 * Thread-safe, lock-free.
 */
public final class StopLatch {
  private final AtomicReference<Stop> first = new AtomicReference<>();
  private volatile Runnable listener = () -> {};

  /** Sets what is told, on the setting thread, that the latch has just been set; must not block. */
  public void onSet(Runnable newListener) {
    listener = newListener;
    if (isSet()) {
      newListener.run();
    }
  }

  /**
   * Latches a stop unless one is latched already.
   *
   * @return whether this one was the first
   */
  public boolean set(StopCause cause, long nowNanos, String evidence) {
    return set(new Stop(cause, nowNanos, evidence));
  }

  /** As {@link #set(StopCause, long, String)}, with a stop made before: needs no memory itself. */
  public boolean set(Stop stop) {
    boolean won = first.compareAndSet(null, stop);
    if (won) {
      listener.run();
    }
    return won;
  }

  public boolean isSet() {
    return first.get() != null;
  }

  public Optional<Stop> stop() {
    return Optional.ofNullable(first.get());
  }
}
