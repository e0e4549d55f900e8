package railglow.time;

import java.util.concurrent.atomic.AtomicLong;

/** A clock that moves only when told to: time as tests and simulations invent it. Thread-safe. */
public final class InventedClock implements MonotonicClock {
  private final AtomicLong nanos;

  public InventedClock(long startNanos) {
    nanos = new AtomicLong(startNanos);
  }

  @Override
  public long nanos() {
    return nanos.get();
  }

  /**
   * @param byNanos not negative
   */
  public void advance(long byNanos) {
    if (byNanos < 0) {
      throw new IllegalArgumentException("a clock can't go back by " + -byNanos + " ns");
    }
    nanos.addAndGet(byNanos);
  }

  /** Moves to a time; nothing happens if it has passed. */
  public void advanceTo(long timeNanos) {
    nanos.accumulateAndGet(timeNanos, (now, then) -> then - now > 0 ? then : now);
  }
}
