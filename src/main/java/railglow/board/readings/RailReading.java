package railglow.board.readings;

/**
 * A resistance to ground as it was read.
 *
 * @param rail its name
 * @param readOhms as read, leads included; infinite for an overload of the meter
 * @param leadOhms resistance of the leads, 0 when sensed at the board or already taken off
 * @param sigmaOhms standard deviation of the reading, meter and contacts
 * @param testVolts at the rail during the reading; NaN when not known
 * @param polarity which lead was on the rail
 */
public record RailReading(
    String rail,
    double readOhms,
    double leadOhms,
    double sigmaOhms,
    double testVolts,
    Polarity polarity) {
  /** A hand-held meter: 1 % of the reading, and contacts that vary; common practice, no source. */
  private static final double METER_SHARE = 0.01;

  private static final double CONTACT_OHMS = 0.05;

  /** The lead that was on the rail. */
  public enum Polarity {
    /** The positive one, as the rail is fed in use. */
    POSITIVE,
    NEGATIVE,
    NOT_SAID
  }

  public RailReading {
    if (Double.isNaN(readOhms) || readOhms < 0 || !(leadOhms >= 0) || !(sigmaOhms > 0)) {
      throw new IllegalArgumentException(
          "a reading of " + readOhms + " ohm through " + leadOhms + " ohm of leads can't be");
    }
  }

  /** A reading of a hand-held meter with the error such meters have. */
  public static RailReading ofMeter(String rail, double readOhms, double leadOhms) {
    return ofMeter(rail, readOhms, leadOhms, Double.NaN, Polarity.NOT_SAID);
  }

  public static RailReading ofMeter(
      String rail, double readOhms, double leadOhms, double testVolts, Polarity polarity) {
    return new RailReading(
        rail, readOhms, leadOhms, meterSigma(readOhms, leadOhms), testVolts, polarity);
  }

  RailReading withSigma(double newSigmaOhms) {
    return new RailReading(rail, readOhms, leadOhms, newSigmaOhms, testVolts, polarity);
  }

  static double meterSigma(double readOhms, double leadOhms) {
    double scale = Double.isInfinite(readOhms) ? 0 : METER_SHARE * readOhms;
    return Math.hypot(scale, Math.max(0.001, leadOhms > 0 ? CONTACT_OHMS : 0.002));
  }

  /** The rail itself, leads taken off; not below zero. */
  public double railOhms() {
    return Math.max(0, readOhms - leadOhms);
  }
}
