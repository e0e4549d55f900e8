package railglow.supply;

import railglow.observed.SupplyReading;
import railglow.time.MonotonicClock;
import railglow.time.Step;

/**
 * Reads a supply that somebody else controls: asks and never tells. A link that is lost is said,
 * and tried again each second. {@link #step} runs on its own thread only; the rest may be called
 * from any.
 */
public final class SupplyWatch implements Step {
  private static final long RETRY_NANOS = 1_000_000_000L;
  private final ScpiSupply supply;
  private final SupplyListener listener;
  private final MonotonicClock clock;
  private final ReadingDraft draft = new ReadingDraft();
  private boolean lost;
  private volatile long lastReadingNanos = Long.MIN_VALUE;

  /**
   * @param supply opened by {@link ScpiSupply#watch}; from now on used by this loop only
   */
  public SupplyWatch(ScpiSupply supply, SupplyListener listener, MonotonicClock clock) {
    this.supply = supply;
    this.listener = listener;
    this.clock = clock;
  }

  @Override
  public long step(long nowNanos) {
    try {
      if (supply.isOutOfStep()) {
        supply.rejoin();
      }
      SupplyReading reading = read();
      lastReadingNanos = reading.endNanos();
      if (lost) {
        lost = false;
        listener.onWarning("The supply answers again.", reading.endNanos());
      }
      listener.onReading(reading);
      return Math.max(clock.nanos(), nowNanos + supply.descriptor().wire().readingIntervalNanos());
    } catch (SupplyException e) {
      if (!lost) {
        lost = true;
        listener.onWarning(
            "The supply can't be read (" + e.getMessage() + "); the log goes on without it.",
            clock.nanos());
      }
      return clock.nanos() + RETRY_NANOS;
    }
  }

  private SupplyReading read() throws SupplyException {
    draft.clear();
    long start = clock.nanos();
    for (int part = 0; part < supply.readingExchanges(); part++) {
      supply.readPart(part, draft);
    }
    return draft.finish(
        start,
        clock.nanos(),
        supply.descriptor().tellsRegulation(),
        draft.outputSwitch() == SwitchState.ON);
  }

  /** End of the newest reading; {@link Long#MIN_VALUE} before the first. */
  public long lastReadingNanos() {
    return lastReadingNanos;
  }
}
