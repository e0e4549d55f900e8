package railglow.run.handsfree;

import java.util.Locale;
import railglow.units.Quantity;
import railglow.units.Unit;

/**
 * What a felt resistance is made of, leads taken off. Measured twice at the same level, at the
 * supply's terminals and at the board, the contact is what the two differ by, and what the meter
 * adds to both falls out.
 *
 * @param railOhms of the rail alone; NaN where it can't be told
 * @param contactOhms of the contact alone; NaN where it can't be told
 * @param withinOhms how far the contact may be off by how much both readings swung; NaN likewise
 * @param togetherOhms rail and contact; NaN where only the rail is measured
 */
public record ContactShare(
    double railOhms, double contactOhms, double withinOhms, double togetherOhms) {
  /** Measured at both places. */
  public static ContactShare of(Contact atTerminals, Contact atBoard) {
    double swing =
        atTerminals.highestOhms()
            - atTerminals.lowestOhms()
            + atBoard.highestOhms()
            - atBoard.lowestOhms();
    return new ContactShare(
        atBoard.ohms(), atTerminals.ohms() - atBoard.ohms(), swing / 2, atTerminals.ohms());
  }

  /** Sensed at the board only: the contact is in none of the numbers. */
  public static ContactShare railAlone(Contact atBoard) {
    return new ContactShare(ohms(atBoard), Double.NaN, Double.NaN, Double.NaN);
  }

  /** Not sensed at the board: one number for both. */
  public static ContactShare together(Contact atTerminals) {
    return new ContactShare(Double.NaN, Double.NaN, Double.NaN, ohms(atTerminals));
  }

  private static double ohms(Contact contact) {
    return contact == null ? Double.NaN : contact.ohms();
  }

  public boolean isContactKnown() {
    return Double.isFinite(contactOhms);
  }

  /** In words; empty when nothing was measured. */
  public String text() {
    if (isContactKnown()) {
      return String.format(Locale.ROOT, "rail %s, contact %s", format(railOhms), contactText());
    }
    if (Double.isFinite(railOhms)) {
      return "rail " + format(railOhms);
    }
    return Double.isFinite(togetherOhms) ? "rail and contact " + format(togetherOhms) : "";
  }

  /** The contact with how far it may be off. */
  String contactText() {
    return Math.abs(contactOhms) <= withinOhms
        ? "below " + format(contactOhms + withinOhms)
        : format(contactOhms) + " +- " + format(withinOhms);
  }

  private static String format(double ohms) {
    return Quantity.format(ohms, Unit.OHM);
  }
}
