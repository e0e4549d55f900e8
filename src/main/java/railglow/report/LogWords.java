package railglow.report;

import java.util.Locale;
import railglow.journal.Entry;
import railglow.journal.Journal;
import railglow.journal.RunHeader;
import railglow.observed.SupplyReading;
import railglow.units.Quantity;
import railglow.units.Unit;

/** What a log was and how far it can be trusted, in sentences. Pure. */
final class LogWords {
  private static final long NEAR_NANOS = 1_000_000_000L;

  private LogWords() {}

  /** Who drove the supply. */
  static String what(Journal journal, Texts texts) {
    RunHeader header = journal.header();
    if (header.sequence().levelVolts() > 0) {
      return texts.get(
          "log.injected",
          Quantity.format(header.sequence().levelVolts(), Unit.VOLT),
          Quantity.format(header.sequence().maxAmperes(), Unit.AMPERE),
          Quantity.format(header.sequence().leadInSeconds(), Unit.SECOND));
    }
    return header.supplyIdentity().isEmpty()
        ? texts.get("log.camera")
        : texts.get("log.watched", header.supplyIdentity());
  }

  /** How well readings and frames lie on one time base; empty where the record does not say. */
  static String aligned(Journal journal, Texts texts) {
    return journal
        .of(Entry.Aligned.class)
        .reduce((first, last) -> last)
        .filter(aligned -> Double.isFinite(aligned.frameSeconds()))
        .map(
            aligned ->
                texts.get(
                    Double.isFinite(aligned.readingSeconds())
                        ? "log.aligned"
                        : "log.aligned.frames",
                    milliseconds(aligned.readingSeconds()),
                    milliseconds(aligned.frameSeconds()),
                    milliseconds(journal.header().camera().latencySeconds()),
                    milliseconds(aligned.readingSeconds() + aligned.frameSeconds())))
        .orElse("");
  }

  private static String milliseconds(double seconds) {
    return String.format(Locale.ROOT, "%.1f ms", 1e3 * seconds);
  }

  /** The reading nearest to a time; null when none lies within a second. */
  static SupplyReading reading(Journal journal, long nanos) {
    return journal
        .of(Entry.Reading.class)
        .map(Entry.Reading::reading)
        .filter(reading -> Math.abs(reading.endNanos() - nanos) <= NEAR_NANOS)
        .reduce((a, b) -> Math.abs(a.endNanos() - nanos) <= Math.abs(b.endNanos() - nanos) ? a : b)
        .orElse(null);
  }
}
