package railglow.thermal.radiometry;

/**
 * The Planckian form of Sakuma and Hattori's equation, S = C / (exp(c2 / (A T + B)) - 1): within
 * parts in a thousand of a band's Planck law and invertible in closed form (Sakuma and Hattori,
 * Temperature: Its Measurement and Control 5, 1982).
 *
 * @param a effective wavelength, um
 * @param b um K
 * @param c scale of the signal
 */
public record SakumaHattori(double a, double b, double c) implements RadiationLaw {
  /** For a band seen with equal weight: A = l (1 - d^2 / (2 l^2)), B = c2 d^2 / (24 l^2). */
  public static SakumaHattori forBand(double lowMicrometres, double highMicrometres) {
    double middle = (lowMicrometres + highMicrometres) / 2;
    double width = highMicrometres - lowMicrometres;
    double squared = width * width / (middle * middle);
    return new SakumaHattori(
        middle * (1 - squared / 2), PlanckBand.C2_MICROMETRE_KELVIN * squared / 24, 1);
  }

  @Override
  public double signal(double absoluteKelvin) {
    return c / Math.expm1(PlanckBand.C2_MICROMETRE_KELVIN / (a * absoluteKelvin + b));
  }

  @Override
  public double slope(double absoluteKelvin) {
    double t = a * absoluteKelvin + b;
    double x = PlanckBand.C2_MICROMETRE_KELVIN / t;
    double grown = Math.expm1(x);
    return c * (grown + 1) / (grown * grown) * x / t * a;
  }

  @Override
  public double absoluteKelvin(double signal) {
    return signal > 0
        ? PlanckBand.C2_MICROMETRE_KELVIN / (a * Math.log1p(c / signal)) - b / a
        : Double.NaN;
  }
}
