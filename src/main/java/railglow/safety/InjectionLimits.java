package railglow.safety;

import railglow.pulse.PulseSequence;

/** The envelopes that a rail and a sequence bring with them, from plain numbers. Pure. */
public final class InjectionLimits {
  /** Default share of a rail's nominal voltage that may be injected. */
  public static final double SHARE_OF_NOMINAL = 0.8;

  /** Most that may be injected where the nominal voltage is not known. */
  public static final double UNKNOWN_NOMINAL_VOLTS = 1.0;

  private InjectionLimits() {}

  /**
   * What may be injected into a rail: never more than the board file says, never the nominal
   * voltage or more, by default at most 80 % of it, and at most 1 V where it is not known.
   *
   * @param rail name, for the origin of the limit
   * @param nominalVolts NaN when not known
   * @param highestInjectionVolts what the board file allows; NaN when it says nothing. It can lower
   *     the default and can raise it up to, but not including, the nominal voltage
   * @throws IllegalArgumentException when the two contradict each other, both named
   */
  public static Envelope ofRail(String rail, double nominalVolts, double highestInjectionVolts) {
    boolean nominalKnown = !Double.isNaN(nominalVolts);
    boolean highestGiven = !Double.isNaN(highestInjectionVolts);
    if (nominalKnown && !(nominalVolts > 0)) {
      throw new IllegalArgumentException(
          "rail " + rail + " has a nominal voltage of " + nominalVolts + " V; it must be above 0");
    }
    if (highestGiven && !(highestInjectionVolts > 0)) {
      throw new IllegalArgumentException(
          "rail " + rail + " allows " + highestInjectionVolts + " V; it must be above 0");
    }
    if (nominalKnown && highestGiven && highestInjectionVolts >= nominalVolts) {
      throw new IllegalArgumentException(
          "rail "
              + rail
              + " allows an injection of "
              + highestInjectionVolts
              + " V, but its nominal voltage is "
              + nominalVolts
              + " V: the injection must stay below the nominal");
    }
    if (highestGiven && nominalKnown) {
      return Envelope.OPEN.withMaxVolts(highestInjectionVolts, "board file, rail " + rail);
    }
    if (nominalKnown) {
      return Envelope.OPEN.withMaxVolts(
          SHARE_OF_NOMINAL * nominalVolts,
          "80 % of the nominal voltage of rail " + rail + " (default)");
    }
    Envelope unknown =
        Envelope.OPEN.withMaxVolts(
            UNKNOWN_NOMINAL_VOLTS, "rail " + rail + " has no known nominal voltage (default)");
    return highestGiven
        ? unknown.withMaxVolts(highestInjectionVolts, "board file, rail " + rail)
        : unknown;
  }

  /** What the sequence itself limits: how hot the board may get. */
  public static Envelope ofSequence(PulseSequence sequence) {
    String origin = "sequence " + sequence.name();
    return Envelope.OPEN
        .withMaxCelsius(sequence.maxCelsius(), origin)
        .withMaxRiseKelvin(sequence.maxRiseKelvin(), origin);
  }
}
