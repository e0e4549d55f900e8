package railglow.report;

import java.util.List;
import java.util.Locale;
import railglow.journal.Entry;
import railglow.journal.Journal;
import railglow.observed.SupplyReading;

/**
 * Followed places beside volts, amperes and watts, one row for each frame, as RFC 4180 wants it.
 * The readings of a row are the nearest in time, if any lies within half a second. Pure.
 */
public final class PlaceTable {
  private static final long NEAR_NANOS = 500_000_000L;
  private static final String[] VALUES = {"mean", "lowest", "highest"};

  private PlaceTable() {}

  /** The places that a log followed itself. */
  public static String csv(Journal journal) {
    return csv(
        journal,
        journal.of(Entry.PlaceNamed.class).map(Entry.PlaceNamed::name).toList(),
        journal.of(Entry.Followed.class).toList());
  }

  /**
   * Any places.
   *
   * @param names in the order of the values
   */
  public static String csv(Journal journal, List<String> names, List<Entry.Followed> followed) {
    StringBuilder out = new StringBuilder("time_s,frame,voltage_V,current_A,power_W");
    String unit = PlaceSummary.unit(journal.header().camera());
    String riseUnit = PlaceSummary.riseUnit(journal.header().camera());
    for (String name : names) {
      for (String value : VALUES) {
        out.append(',').append(quoted(name + " " + value + "_" + unit));
      }
      for (String value : VALUES) {
        out.append(',').append(quoted(name + " " + value + " rise_" + riseUnit));
      }
    }
    out.append("\r\n");
    List<SupplyReading> readings =
        journal.of(Entry.Reading.class).map(Entry.Reading::reading).toList();
    int next = 0;
    for (Entry.Followed row : followed) {
      while (next + 1 < readings.size()
          && distance(readings.get(next + 1), row) <= distance(readings.get(next), row)) {
        next++;
      }
      number(out, journal.seconds(row.nanos()), 6, true);
      out.append(',').append(row.frame());
      boolean near = next < readings.size() && distance(readings.get(next), row) <= NEAR_NANOS;
      number(out, near ? readings.get(next).volts() : Double.NaN, 6, false);
      number(out, near ? readings.get(next).amperes() : Double.NaN, 6, false);
      number(out, near ? readings.get(next).watts() : Double.NaN, 6, false);
      for (int place = 0; place < names.size(); place++) {
        number(out, row.mean()[place], 4, false);
        number(out, row.low()[place], 4, false);
        number(out, row.high()[place], 4, false);
        number(out, row.riseMean()[place], 4, false);
        number(out, row.riseLow()[place], 4, false);
        number(out, row.riseHigh()[place], 4, false);
      }
      out.append("\r\n");
    }
    return out.toString();
  }

  private static long distance(SupplyReading reading, Entry.Followed row) {
    long middle = reading.startNanos() + (reading.endNanos() - reading.startNanos()) / 2;
    return Math.abs(middle - row.nanos());
  }

  private static void number(StringBuilder out, double value, int decimals, boolean first) {
    if (!first) {
      out.append(',');
    }
    if (Double.isFinite(value)) {
      out.append(String.format(Locale.ROOT, "%." + decimals + "f", value));
    }
  }

  private static String quoted(String text) {
    return text.matches("[^,\"\r\n]*") ? text : "\"" + text.replace("\"", "\"\"") + "\"";
  }
}
