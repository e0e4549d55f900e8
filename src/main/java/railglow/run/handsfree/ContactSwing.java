package railglow.run.handsfree;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import railglow.journal.Entry;
import railglow.observed.SupplyReading;
import railglow.run.ContactNotes;

/**
 * Notices an ON half in which the resistance leaves its band: the probe slips, and what the source
 * got in that half is not known. Each half is judged by its own middle resistance, so a rail that
 * drifts as it gets warm, or a new point of rest, spoils nothing. Not thread-safe.
 */
public final class ContactSwing implements ContactNotes {
  /** After the output was last seen off. */
  private static final long SETTLE_NANOS = 120_000_000L;

  private static final int LEAST_READINGS = 3;
  private final ContactBounds bounds;
  private final List<Double> half = new ArrayList<>();
  private long lastOffNanos = Long.MIN_VALUE;
  private boolean told;

  public ContactSwing(ContactBounds bounds) {
    this.bounds = bounds;
  }

  @Override
  public Optional<Entry.ContactSwung> take(SupplyReading reading) {
    if (!reading.outputOn()) {
      lastOffNanos = reading.endNanos();
      half.clear();
      told = false;
      return Optional.empty();
    }
    boolean measured = Double.isFinite(reading.volts()) && Double.isFinite(reading.amperes());
    if (!measured
        || told
        || lastOffNanos == Long.MIN_VALUE
        || reading.startNanos() - lastOffNanos < SETTLE_NANOS
        || !bounds.flows(reading.amperes())) {
      return Optional.empty();
    }
    half.add(bounds.ohms(reading.volts(), reading.amperes()));
    List<Double> sorted = new ArrayList<>(half);
    Collections.sort(sorted);
    double lowest = sorted.get(0);
    double middle = sorted.get(sorted.size() / 2);
    double highest = sorted.get(sorted.size() - 1);
    double allowed = bounds.allowedOhms(middle, reading.amperes());
    if (half.size() < LEAST_READINGS || Math.max(highest - middle, middle - lowest) <= allowed) {
      return Optional.empty();
    }
    told = true;
    return Optional.of(new Entry.ContactSwung(reading.endNanos(), lowest, highest));
  }
}
