package railglow.sim.wire;

import railglow.sim.circuit.Circuit;
import railglow.sim.fault.FaultKind;
import railglow.sim.fault.FaultSwitches;
import railglow.sim.picture.GaussianNoise;

/** Reads the output back with noise and resolution, or not at all. Not thread-safe. */
final class Meter {
  private static final double OVERFLOW = 9.9e37;
  private final SupplySettings settings;
  private final FaultSwitches faults;
  private final GaussianNoise noise;

  Meter(SupplySettings settings, FaultSwitches faults, long seed) {
    this.settings = settings;
    this.faults = faults;
    noise = GaussianNoise.of(seed, 1_000_003);
  }

  double volts(Circuit circuit, long nowNanos) {
    double noisy = circuit.senseVolts() + settings.voltsNoise() * noise.next();
    return disturbed(rounded(noisy, settings.voltsResolution()), nowNanos);
  }

  double amperes(Circuit circuit, long nowNanos) {
    double noisy = circuit.outputAmperes() + settings.amperesNoise() * noise.next();
    return disturbed(rounded(noisy, settings.amperesResolution()), nowNanos);
  }

  private double disturbed(double value, long nowNanos) {
    if (faults.isActive(FaultKind.NOT_A_NUMBER, nowNanos)) {
      return Double.NaN;
    }
    return faults.isActive(FaultKind.OVERFLOW_READING, nowNanos) ? OVERFLOW : value;
  }

  private static double rounded(double value, double step) {
    return Math.rint(value / step) * step;
  }
}
