package railglow.thermal.radiometry;

/**
 * Planck's law summed over a band of wavelengths, by the series of the fractional function (Chang
 * and Rhee, Blackbody radiation functions, Int. Comm. Heat Mass Transfer 11, 1984).
 *
 * <p>The signal is the exitance in W/m^2.
 *
 * @param lowMicrometres shorter wavelength
 * @param highMicrometres longer wavelength
 */
public record PlanckBand(double lowMicrometres, double highMicrometres) implements RadiationLaw {
  /** Second radiation constant h c / k of the exact SI constants, in um K. */
  public static final double C2_MICROMETRE_KELVIN = 1.438776877e4;

  /** The band of uncooled long-wave cameras. */
  public static final PlanckBand LONG_WAVE = new PlanckBand(8, 14);

  private static final double NORM = 15 / Math.pow(Math.PI, 4);
  private static final int MOST_TERMS = 400;
  private static final int NEWTON_STEPS = 60;

  public PlanckBand {
    if (!(lowMicrometres >= 0 && highMicrometres > lowMicrometres)) {
      throw new IllegalArgumentException(
          "a band from " + lowMicrometres + " to " + highMicrometres + " um is empty");
    }
  }

  /** The share of all radiation below a wavelength; wavelength times temperature in um K. */
  public static double fractionBelow(double micrometreKelvin) {
    if (!(micrometreKelvin > 0)) {
      return 0;
    }
    double x = C2_MICROMETRE_KELVIN / micrometreKelvin;
    double sum = 0;
    for (int n = 1; n <= MOST_TERMS; n++) {
      double term =
          Math.exp(-n * x)
              / n
              * (x * x * x + 3 * x * x / n + 6 * x / ((double) n * n) + 6.0 / n / n / n);
      sum += term;
      if (term < 1e-17 * sum) {
        break;
      }
    }
    return NORM * sum;
  }

  private static double fractionSlope(double micrometreKelvin) {
    if (!(micrometreKelvin > 0)) {
      return 0;
    }
    double x = C2_MICROMETRE_KELVIN / micrometreKelvin;
    return NORM * x * x * x / Math.expm1(x) * x / micrometreKelvin;
  }

  /** The share of all radiation that lies in the band. */
  public double fraction(double absoluteKelvin) {
    return fractionBelow(highMicrometres * absoluteKelvin)
        - fractionBelow(lowMicrometres * absoluteKelvin);
  }

  @Override
  public double signal(double absoluteKelvin) {
    return TotalRadiation.STEFAN_BOLTZMANN * Math.pow(absoluteKelvin, 4) * fraction(absoluteKelvin);
  }

  @Override
  public double slope(double absoluteKelvin) {
    double total = TotalRadiation.STEFAN_BOLTZMANN * Math.pow(absoluteKelvin, 4);
    return 4 * signal(absoluteKelvin) / absoluteKelvin
        + total
            * (highMicrometres * fractionSlope(highMicrometres * absoluteKelvin)
                - lowMicrometres * fractionSlope(lowMicrometres * absoluteKelvin));
  }

  @Override
  public double absoluteKelvin(double signal) {
    if (!(signal > 0) || Double.isInfinite(signal)) {
      return Double.NaN;
    }
    // In the logarithm of both the law is nearly a straight line, so Newton's steps can't run away.
    double kelvin = 300;
    for (int i = 0; i < NEWTON_STEPS; i++) {
      double here = signal(kelvin);
      double step = Math.log(signal / here) * here / (slope(kelvin) * kelvin);
      kelvin *= Math.exp(Math.max(-0.7, Math.min(0.7, step)));
      if (Math.abs(step) < 1e-15) {
        break;
      }
    }
    return kelvin;
  }
}
