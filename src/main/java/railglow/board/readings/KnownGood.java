package railglow.board.readings;

import java.util.Collection;
import java.util.Collections;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import railglow.units.Interval;

/**
 * Readings of boards of the same type that work. Immutable.
 *
 * @param ohms the range seen, by rail name in upper case
 */
public record KnownGood(Map<String, Interval> ohms) {
  /** How far two good boards of a type and two meters differ; common practice, no source. */
  static final double BOARD_TO_BOARD = 1.5;

  public KnownGood {
    ohms = Collections.unmodifiableMap(new TreeMap<>(ohms));
  }

  /** From the readings of one board or of several. */
  public static KnownGood of(Collection<RailReading> readings) {
    Map<String, Interval> ohms = new TreeMap<>();
    for (RailReading reading : readings) {
      double value = reading.railOhms();
      if (reading.polarity() != RailReading.Polarity.NEGATIVE) {
        ohms.merge(
            reading.rail().toUpperCase(Locale.ROOT),
            new Interval(value, value),
            (a, b) -> new Interval(Math.min(a.low(), b.low()), Math.max(a.high(), b.high())));
      }
    }
    return new KnownGood(ohms);
  }

  /** What is normal by these boards: the range seen, widened by what boards differ. */
  public Optional<Interval> normal(String rail) {
    return Optional.ofNullable(ohms.get(rail.toUpperCase(Locale.ROOT)))
        .map(seen -> new Interval(seen.low() / BOARD_TO_BOARD, seen.high() * BOARD_TO_BOARD));
  }
}
