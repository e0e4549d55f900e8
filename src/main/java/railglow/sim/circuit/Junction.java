package railglow.sim.circuit;

/**
 * A semiconductor path: i = Is (exp(v / nVt) - 1), Shockley's law.
 *
 * @param place the part its heat goes to
 * @param saturationAmperes Is
 * @param thermalVolts n times kT/q, about 0.026 V to 0.052 V
 */
public record Junction(String place, double saturationAmperes, double thermalVolts) {
  /** Voltage across the junction at a forward current. */
  double voltsAt(double amperes) {
    return thermalVolts * Math.log1p(Math.max(0, amperes) / saturationAmperes);
  }

  /** Differential resistance at a forward current. */
  double ohmsAt(double amperes) {
    return thermalVolts / (Math.max(0, amperes) + saturationAmperes);
  }
}
