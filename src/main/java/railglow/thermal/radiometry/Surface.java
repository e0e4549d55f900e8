package railglow.thermal.radiometry;

/**
 * What a surface does to a temperature seen through nothing but air: it radiates its emissivity's
 * share and reflects the rest of its surroundings (the measurement equation of ISO 18434-1 with a
 * transmission of 1). Immutable.
 *
 * @param emissivity in the camera's band, above 0 up to 1
 * @param emissivitySigma standard deviation of it
 * @param reflectedCelsius temperature of what the surface mirrors
 * @param reflectedSigmaKelvin standard deviation of it
 */
public record Surface(
    double emissivity,
    double emissivitySigma,
    double reflectedCelsius,
    double reflectedSigmaKelvin) {
  /** Below this a surface is called bare metal: most of what it shows is its surroundings. */
  public static final double BARE_METAL = 0.3;

  public Surface {
    if (!(emissivity > 0 && emissivity <= 1) || !(emissivitySigma >= 0)) {
      throw new IllegalArgumentException(
          "an emissivity is above 0 and up to 1, with an error of 0 or more; not "
              + emissivity
              + " +- "
              + emissivitySigma);
    }
    if (!(reflectedSigmaKelvin >= 0)
        || !(reflectedCelsius > -RadiationLaw.ZERO_CELSIUS_KELVIN)
        || Double.isInfinite(reflectedCelsius)) {
      throw new IllegalArgumentException(
          "the reflected temperature can't be " + reflectedCelsius + " degC");
    }
  }

  /** A value and its standard deviation, both in the unit the method names. */
  public record Estimate(double value, double sigma) {}

  public boolean isBareMetal() {
    return emissivity < BARE_METAL;
  }

  /** What a camera set to emissivity 1 shows of a surface that is truly this warm, degC. */
  public double apparentCelsius(RadiationLaw law, double trueCelsius) {
    return celsius(
        law,
        emissivity * law.signal(kelvin(trueCelsius))
            + (1 - emissivity) * law.signal(kelvin(reflectedCelsius)));
  }

  /**
   * The true temperature behind an apparent one, degC, with the error from emissivity and
   * reflection; NaN when no surface of this kind could look that cold.
   */
  public Estimate trueCelsius(RadiationLaw law, double apparentCelsius) {
    double value = corrected(law, apparentCelsius, emissivity, reflectedCelsius);
    double byEmissivity = perUnitEmissivity(law, apparentCelsius) * emissivitySigma;
    double byReflection =
        (corrected(law, apparentCelsius, emissivity, reflectedCelsius + 0.01)
                - corrected(law, apparentCelsius, emissivity, reflectedCelsius - 0.01))
            / 0.02
            * reflectedSigmaKelvin;
    return new Estimate(value, Math.hypot(byEmissivity, byReflection));
  }

  private double perUnitEmissivity(RadiationLaw law, double apparentCelsius) {
    double step = Math.min(1e-4, emissivity * 1e-3);
    return (corrected(law, apparentCelsius, emissivity + step, reflectedCelsius)
            - corrected(law, apparentCelsius, emissivity - step, reflectedCelsius))
        / (2 * step);
  }

  /**
   * The true rise behind an apparent one, K. What is reflected stays the same while the part warms,
   * so it cancels to first order and the rise is the apparent one divided by nearly the emissivity.
   *
   * @param apparentStartCelsius before warming, as seen
   * @param apparentRise as seen, with its error
   */
  public Estimate trueRiseKelvin(
      RadiationLaw law, double apparentStartCelsius, Estimate apparentRise) {
    double rise =
        rise(law, apparentStartCelsius, apparentRise.value(), emissivity, reflectedCelsius);
    double step = Math.min(1e-4, emissivity * 1e-3);
    double perEmissivity =
        (rise(law, apparentStartCelsius, apparentRise.value(), emissivity + step, reflectedCelsius)
                - rise(
                    law,
                    apparentStartCelsius,
                    apparentRise.value(),
                    emissivity - step,
                    reflectedCelsius))
            / (2 * step);
    double perReflected =
        (rise(law, apparentStartCelsius, apparentRise.value(), emissivity, reflectedCelsius + 0.01)
                - rise(
                    law,
                    apparentStartCelsius,
                    apparentRise.value(),
                    emissivity,
                    reflectedCelsius - 0.01))
            / 0.02;
    double perApparent =
        (rise(law, apparentStartCelsius, apparentRise.value() + 0.001, emissivity, reflectedCelsius)
                - rise(
                    law,
                    apparentStartCelsius,
                    apparentRise.value() - 0.001,
                    emissivity,
                    reflectedCelsius))
            / 0.002;
    double sigma =
        Math.sqrt(
            Math.pow(perEmissivity * emissivitySigma, 2)
                + Math.pow(perReflected * reflectedSigmaKelvin, 2)
                + Math.pow(perApparent * apparentRise.sigma(), 2));
    return new Estimate(rise, sigma);
  }

  private static double rise(
      RadiationLaw law, double start, double apparentRise, double emissivity, double reflected) {
    return corrected(law, start + apparentRise, emissivity, reflected)
        - corrected(law, start, emissivity, reflected);
  }

  private static double corrected(
      RadiationLaw law, double apparentCelsius, double emissivity, double reflectedCelsius) {
    return celsius(
        law,
        (law.signal(kelvin(apparentCelsius))
                - (1 - emissivity) * law.signal(kelvin(reflectedCelsius)))
            / emissivity);
  }

  private static double kelvin(double celsius) {
    return celsius + RadiationLaw.ZERO_CELSIUS_KELVIN;
  }

  private static double celsius(RadiationLaw law, double signal) {
    return law.absoluteKelvin(signal) - RadiationLaw.ZERO_CELSIUS_KELVIN;
  }
}
