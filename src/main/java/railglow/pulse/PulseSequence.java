package railglow.pulse;

/**
 * A programme of pulses as declared: one level, switched on and off with a fixed period. A cycle
 * starts in the middle of an OFF half, so it is quarter OFF, half ON, quarter OFF.
 *
 * @param name as the user knows it
 * @param purpose one sentence
 * @param levelVolts the level in the ON halves
 * @param maxAmperes the supply's current limit
 * @param periodSeconds one whole cycle
 * @param minCycles a verdict is never given before these
 * @param maxCycles the cap
 * @param untilSure whether the run may end before the cap when it is sure
 * @param leadInSeconds output off before the first cycle, for the background
 * @param restSeconds output off after the last cycle
 * @param familyWiseError the error of the whole run, for example 0.05
 * @param maxCelsius hottest pixel allowed
 * @param maxRiseKelvin largest rise allowed
 * @param order in which ON and OFF follow one another
 */
public record PulseSequence(
    String name,
    String purpose,
    double levelVolts,
    double maxAmperes,
    double periodSeconds,
    int minCycles,
    int maxCycles,
    boolean untilSure,
    double leadInSeconds,
    double restSeconds,
    double familyWiseError,
    double maxCelsius,
    double maxRiseKelvin,
    PulseOrder order) {
  /** Plain square pulses. */
  public PulseSequence(
      String name,
      String purpose,
      double levelVolts,
      double maxAmperes,
      double periodSeconds,
      int minCycles,
      int maxCycles,
      boolean untilSure,
      double leadInSeconds,
      double restSeconds,
      double familyWiseError,
      double maxCelsius,
      double maxRiseKelvin) {
    this(
        name,
        purpose,
        levelVolts,
        maxAmperes,
        periodSeconds,
        minCycles,
        maxCycles,
        untilSure,
        leadInSeconds,
        restSeconds,
        familyWiseError,
        maxCelsius,
        maxRiseKelvin,
        PulseOrder.SQUARE);
  }

  public PulseSequence withLevelVolts(double volts) {
    return new PulseSequence(
        name,
        purpose,
        volts,
        maxAmperes,
        periodSeconds,
        minCycles,
        maxCycles,
        untilSure,
        leadInSeconds,
        restSeconds,
        familyWiseError,
        maxCelsius,
        maxRiseKelvin,
        order);
  }

  public PulseSequence withMaxAmperes(double amperes) {
    return new PulseSequence(
        name,
        purpose,
        levelVolts,
        amperes,
        periodSeconds,
        minCycles,
        maxCycles,
        untilSure,
        leadInSeconds,
        restSeconds,
        familyWiseError,
        maxCelsius,
        maxRiseKelvin,
        order);
  }

  public PulseSequence withMaxCycles(int cycles) {
    return new PulseSequence(
        name,
        purpose,
        levelVolts,
        maxAmperes,
        periodSeconds,
        minCycles,
        cycles,
        untilSure,
        leadInSeconds,
        restSeconds,
        familyWiseError,
        maxCelsius,
        maxRiseKelvin,
        order);
  }
}
