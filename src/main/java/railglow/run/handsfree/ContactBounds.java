package railglow.run.handsfree;

/**
 * What tells a contact from none and a steady one from a bad one.
 *
 * @param openAmperes up to this nothing flows: more than the meter shows by its own error
 * @param leadOhms to be taken off; 0 where the supply senses at the board
 * @param band how far a resistance may lie from the middle one, as a share of it
 * @param voltsNoise how far two voltage readings of the same thing differ
 * @param amperesNoise likewise
 * @param steadySeconds how long all must stay in the band to be steady
 * @param liftSeconds how long nothing must flow to be lifted
 */
public record ContactBounds(
    double openAmperes,
    double leadOhms,
    double band,
    double voltsNoise,
    double amperesNoise,
    double steadySeconds,
    double liftSeconds) {
  private static final double USUAL_BAND = 0.15;
  private static final double USUAL_STEADY_SECONDS = 0.7;
  private static final double USUAL_LIFT_SECONDS = 0.35;

  /** Above the meter's error by this factor something flows. */
  private static final double CLEARLY = 1.5;

  /** A meter's error is mostly the same from reading to reading; this share of it is not. */
  private static final double NOISE_SHARE = 0.25;

  public ContactBounds {
    if (!(openAmperes > 0 && leadOhms >= 0 && band > 0 && steadySeconds > 0 && liftSeconds > 0)) {
      throw new IllegalArgumentException("bounds of a contact must be above zero");
    }
  }

  /**
   * The usual ones for a supply.
   *
   * @param voltsError of its meter at nought
   * @param amperesError likewise
   * @param leadOhms 0 where it senses at the board
   */
  public static ContactBounds usual(double voltsError, double amperesError, double leadOhms) {
    return new ContactBounds(
        Math.max(1e-6, CLEARLY * amperesError),
        leadOhms,
        USUAL_BAND,
        NOISE_SHARE * voltsError,
        NOISE_SHARE * amperesError,
        USUAL_STEADY_SECONDS,
        USUAL_LIFT_SECONDS);
  }

  /** Up to this resistance a contact is felt at a level. */
  public double reachOhms(double levelVolts) {
    return levelVolts / openAmperes - leadOhms;
  }

  boolean flows(double amperes) {
    return Math.abs(amperes) > openAmperes;
  }

  double ohms(double volts, double amperes) {
    return volts / amperes - leadOhms;
  }

  /**
   * How far from the middle a resistance may lie: its band, contact and leads included, and what
   * the meters' noise makes of it.
   */
  double allowedOhms(double middleOhms, double amperes) {
    double total = Math.max(0, middleOhms + leadOhms);
    double noise = (voltsNoise + total * amperesNoise) / Math.abs(amperes);
    return band * total + 2 * noise;
  }
}
