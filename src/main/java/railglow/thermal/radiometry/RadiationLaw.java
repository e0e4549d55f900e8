package railglow.thermal.radiometry;

/**
 * How strongly a black surface radiates in what a camera takes in. Monotonic in temperature.
 * Implementations are pure and thread-safe.
 */
public interface RadiationLaw {
  double ZERO_CELSIUS_KELVIN = 273.15;

  /** Signal of a black surface; watts per square metre, or any constant multiple of it. */
  double signal(double absoluteKelvin);

  /** Change of the signal per kelvin. */
  double slope(double absoluteKelvin);

  /** The temperature of the black surface that gives a signal; NaN for a signal not above zero. */
  double absoluteKelvin(double signal);
}
