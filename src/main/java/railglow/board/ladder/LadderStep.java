package railglow.board.ladder;

/**
 * One settled step of a ladder, at the board (leads taken off).
 *
 * @param volts at the rail
 * @param voltsSigma standard deviation of the reading
 * @param amperes into the rail
 * @param amperesSigma standard deviation of the reading, above 0
 * @param driftAmperes current at the end of the step minus current at its start
 * @param driftSigma standard deviation of that, above 0
 * @param supplyLimits whether the supply was in constant current
 */
public record LadderStep(
    double volts,
    double voltsSigma,
    double amperes,
    double amperesSigma,
    double driftAmperes,
    double driftSigma,
    boolean supplyLimits) {
  public LadderStep {
    if (!Double.isFinite(volts) || !Double.isFinite(amperes) || !Double.isFinite(driftAmperes)) {
      throw new IllegalArgumentException("a step of " + volts + " V and " + amperes + " A");
    }
    if (!(voltsSigma >= 0) || !(amperesSigma > 0) || !(driftSigma > 0)) {
      throw new IllegalArgumentException("a step needs the errors of its readings");
    }
  }

  /** A step of which only one settled reading is known. */
  public static LadderStep settled(
      double volts, double voltsSigma, double amperes, double amperesSigma, boolean supplyLimits) {
    return new LadderStep(
        volts, voltsSigma, amperes, amperesSigma, 0, amperesSigma * Math.sqrt(2), supplyLimits);
  }
}
