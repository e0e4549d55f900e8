package railglow.report;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import railglow.journal.Entry;
import railglow.journal.Journal;
import railglow.observed.SupplyReading;
import railglow.safety.Bound;
import railglow.safety.Envelope;
import railglow.units.Unit;

/**
 * One limit and how close the run came to it.
 *
 * @param textKey names the limit in the report's texts
 * @param unit of both values
 * @param highest seen during the run; NaN when nothing was measured
 */
record LimitUse(String textKey, Unit unit, Bound bound, double highest) {
  /** 1 at the limit; NaN when there is no limit or nothing was measured. */
  double share() {
    return bound.isSet() ? highest / bound.value() : Double.NaN;
  }

  /** All limits of a run in the order of the envelope; times as seen in the journal. */
  static List<LimitUse> of(Journal journal) {
    Envelope envelope = journal.header().envelope();
    List<SupplyReading> readings =
        journal.of(Entry.Reading.class).map(Entry.Reading::reading).toList();
    List<LimitUse> uses = new ArrayList<>();
    uses.add(
        new LimitUse(
            "limit.volts", Unit.VOLT, envelope.maxVolts(), max(readings, SupplyReading::volts)));
    uses.add(
        new LimitUse(
            "limit.amperes",
            Unit.AMPERE,
            envelope.maxAmperes(),
            max(readings, SupplyReading::amperes)));
    uses.add(
        new LimitUse(
            "limit.watts", Unit.WATT, envelope.maxWatts(), max(readings, SupplyReading::watts)));
    uses.add(new LimitUse("limit.joules", Unit.JOULE, envelope.maxJoules(), joules(readings)));
    List<Entry.Hottest> hottest = journal.of(Entry.Hottest.class).toList();
    uses.add(
        new LimitUse(
            "limit.celsius",
            Unit.CELSIUS,
            envelope.maxCelsius(),
            max(hottest, Entry.Hottest::celsius)));
    uses.add(
        new LimitUse(
            "limit.rise",
            Unit.KELVIN,
            envelope.maxRiseKelvin(),
            max(hottest, Entry.Hottest::riseKelvin)));
    return List.copyOf(uses);
  }

  private static <T> double max(List<T> from, ToDoubleFunction<T> value) {
    return from.stream().mapToDouble(value).filter(Double::isFinite).max().orElse(Double.NaN);
  }

  /** The power of each reading held until the next one while the output is on. */
  static double joules(List<SupplyReading> readings) {
    if (readings.isEmpty()) {
      return Double.NaN;
    }
    double joules = 0;
    for (int i = 0; i + 1 < readings.size(); i++) {
      SupplyReading reading = readings.get(i);
      if (reading.outputOn() && Double.isFinite(reading.watts())) {
        joules += reading.watts() * (readings.get(i + 1).endNanos() - reading.endNanos()) / 1e9;
      }
    }
    return joules;
  }
}
