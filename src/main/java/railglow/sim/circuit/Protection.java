package railglow.sim.circuit;

/**
 * The supply's own protections as set.
 *
 * @param overVolts trips at once above this
 * @param overAmperes trips above this for longer than the delay
 * @param overCurrentEnabled whether the current protection may trip at all
 * @param delaySeconds of the current protection, so that charging a capacitor does not trip it
 */
public record Protection(
    double overVolts, double overAmperes, boolean overCurrentEnabled, double delaySeconds) {
  public Protection withOverVolts(double volts) {
    return new Protection(volts, overAmperes, overCurrentEnabled, delaySeconds);
  }

  public Protection withOverAmperes(double amperes) {
    return new Protection(overVolts, amperes, overCurrentEnabled, delaySeconds);
  }

  public Protection withOverCurrentEnabled(boolean enabled) {
    return new Protection(overVolts, overAmperes, enabled, delaySeconds);
  }

  public Protection withDelaySeconds(double seconds) {
    return new Protection(overVolts, overAmperes, overCurrentEnabled, seconds);
  }
}
