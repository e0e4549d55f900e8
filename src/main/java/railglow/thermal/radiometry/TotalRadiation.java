package railglow.thermal.radiometry;

/** All wavelengths: Stefan and Boltzmann's law with the exact constant of CODATA 2018. */
public final class TotalRadiation implements RadiationLaw {
  /** W m^-2 K^-4; 2 pi^5 k^4 / (15 h^3 c^2) of the exact SI constants. */
  public static final double STEFAN_BOLTZMANN = 5.670374419e-8;

  @Override
  public double signal(double absoluteKelvin) {
    return STEFAN_BOLTZMANN * Math.pow(absoluteKelvin, 4);
  }

  @Override
  public double slope(double absoluteKelvin) {
    return 4 * STEFAN_BOLTZMANN * Math.pow(absoluteKelvin, 3);
  }

  @Override
  public double absoluteKelvin(double signal) {
    return signal > 0 ? Math.pow(signal / STEFAN_BOLTZMANN, 0.25) : Double.NaN;
  }
}
