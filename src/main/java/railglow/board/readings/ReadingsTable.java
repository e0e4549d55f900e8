package railglow.board.readings;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Readings as the table {@link ReadingsReader} reads, and their correction. Pure. */
public final class ReadingsTable {
  private ReadingsTable() {}

  /**
   * Older readings with newer ones in their place: a rail that was read again loses all its older
   * readings; one that was read with the leads swapped only those of that kind.
   */
  public static List<RailReading> corrected(List<RailReading> older, List<RailReading> newer) {
    List<RailReading> all = new ArrayList<>();
    for (RailReading reading : older) {
      if (newer.stream().noneMatch(n -> replaces(n, reading))) {
        all.add(reading);
      }
    }
    all.addAll(newer);
    return all;
  }

  private static boolean replaces(RailReading newer, RailReading older) {
    boolean swapped = newer.polarity() == RailReading.Polarity.NEGATIVE;
    return newer.rail().equalsIgnoreCase(older.rail())
        && (!swapped || older.polarity() == RailReading.Polarity.NEGATIVE);
  }

  /** The text of the file; rails that hold commas or quotes are quoted. */
  public static String csv(List<RailReading> readings) {
    StringBuilder text = new StringBuilder("rail,reading,leads,level,polarity,error\n");
    for (RailReading reading : readings) {
      text.append('"')
          .append(reading.rail().replace("\"", "\"\""))
          .append("\",")
          .append(Double.isInfinite(reading.readOhms()) ? "open" : reading.readOhms() + " ohm")
          .append(',')
          .append(reading.leadOhms())
          .append(" ohm,")
          .append(Double.isNaN(reading.testVolts()) ? "" : reading.testVolts() + " V")
          .append(',')
          .append(
              reading.polarity() == RailReading.Polarity.NOT_SAID
                  ? ""
                  : reading.polarity().name().toLowerCase(Locale.ROOT))
          .append(',')
          .append(reading.sigmaOhms() + " ohm")
          .append('\n');
    }
    return text.toString();
  }
}
