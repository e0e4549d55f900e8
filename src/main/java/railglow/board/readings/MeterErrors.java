package railglow.board.readings;

/**
 * How far a supply's own meters may be off; taken as standard deviations, which is on the safe
 * side.
 *
 * @param volts at zero, common to all readings
 * @param voltsShare of the value, likewise
 * @param amperes at zero
 * @param amperesShare of the value
 */
public record MeterErrors(double volts, double voltsShare, double amperes, double amperesShare) {

  /** Of one volts-by-amperes ratio. */
  double ratioSigma(double atVolts, double atAmperes) {
    double ohms = atVolts / atAmperes;
    double voltsSigma = volts + voltsShare * Math.abs(atVolts);
    double amperesSigma = amperes + amperesShare * Math.abs(atAmperes);
    return Math.hypot(voltsSigma / atAmperes, ohms * amperesSigma / atAmperes);
  }

  /** Of a slope over several levels: errors at zero cancel, shares stay. */
  double slopeSigma(double ohms) {
    return ohms * Math.hypot(voltsShare, amperesShare);
  }
}
