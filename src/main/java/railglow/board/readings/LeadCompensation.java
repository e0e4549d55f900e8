package railglow.board.readings;

/**
 * Taking leads and thermal voltages out of a resistance measurement. Pure.
 *
 * <p>Current reversal and three-reading delta: as published for low-resistance measurement by
 * instrument makers; the three-reading form also cancels a voltage that drifts evenly.
 */
public final class LeadCompensation {
  private LeadCompensation() {}

  /**
   * Voltage without thermal voltage, from two readings with the current reversed: (V+ - V-) / 2.
   */
  public static double reversedVolts(double forwardVolts, double reversedVolts) {
    return (forwardVolts - reversedVolts) / 2;
  }

  /** Voltage from readings at plus, minus, plus current: (A - 2 B + C) / 4. */
  public static double deltaVolts(double firstVolts, double reversedVolts, double lastVolts) {
    return (firstVolts - 2 * reversedVolts + lastVolts) / 4;
  }

  /** Noise of {@link #deltaVolts} for unit noise of a reading: sqrt(6) / 4. */
  public static double deltaNoise() {
    return Math.sqrt(6) / 4;
  }

  /** Noise of {@link #reversedVolts} for unit noise of a reading: sqrt(2) / 2. */
  public static double reversedNoise() {
    return Math.sqrt(2) / 2;
  }

  /**
   * A rail's resistance from a gentle injection.
   *
   * @param volts at the supply, or at the board when sensed there (then leadOhms is 0)
   * @param amperes above 0
   * @param leadOhms of both leads
   * @param voltsSigma of the supply's reading
   * @param amperesSigma likewise
   * @param leadSigmaOhms how well the leads are known
   */
  public static RailReading injected(
      String rail,
      double volts,
      double amperes,
      double leadOhms,
      double voltsSigma,
      double amperesSigma,
      double leadSigmaOhms) {
    if (!(amperes > 0) || !(volts >= 0)) {
      throw new IllegalArgumentException("no resistance from " + volts + " V at " + amperes + " A");
    }
    double read = volts / amperes;
    double share = Math.hypot(voltsSigma / amperes, read * amperesSigma / amperes);
    double sigma = Math.max(1e-6, Math.hypot(share, leadSigmaOhms));
    return new RailReading(
        rail, read, leadOhms, sigma, volts - amperes * leadOhms, RailReading.Polarity.POSITIVE);
  }
}
