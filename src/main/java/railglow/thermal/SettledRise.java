package railglow.thermal;

import railglow.units.Interval;

/**
 * From the amplitudes in both channels to the final rise and the time constant of a first-order
 * body seen through the camera. The interval is by profile likelihood: every rise that some time
 * constant of the range searched makes agree with the data. Immutable.
 *
 * @param kelvin final rise
 * @param interval95 of it
 * @param timeConstantSeconds of the body
 */
record SettledRise(double kelvin, Interval interval95, double timeConstantSeconds) {
  private static final int STEPS = 80;
  private static final double CHI_SQUARED_95 = 3.841458820694124;

  /**
   * A body that follows at once lies on the edge of what is possible, where half of the noise in
   * the quadrature is taken for delay: with this room the interval still covers 95 %.
   */
  private static final double AT_THE_EDGE = 5;

  /**
   * @param inPhase amplitude
   * @param quadrature amplitude
   * @param vII variance of the in-phase amplitude
   * @param vCC variance of the quadrature amplitude
   * @param vIC covariance
   * @param commonRelativeVariance of a factor common to both (the shape's)
   */
  static SettledRise of(
      double inPhase,
      double quadrature,
      double vII,
      double vCC,
      double vIC,
      double commonRelativeVariance,
      DetectionSettings settings) {
    double determinant = vII * vCC - vIC * vIC;
    double[] taus = timeConstants(settings);
    double[] chi = new double[taus.length];
    double[] rise = new double[taus.length];
    double[] information = new double[taus.length];
    double total = quadraticForm(inPhase, quadrature, vII, vCC, vIC, determinant);
    int best = 0;
    for (int k = 0; k < taus.length; k++) {
      FirstOrderResponse g = settings.response(taus[k]);
      double i = g.inPhase();
      double c = g.quadrature();
      information[k] = quadraticForm(i, c, vII, vCC, vIC, determinant);
      double cross =
          (vCC * i * inPhase + vII * c * quadrature - vIC * (i * quadrature + c * inPhase))
              / determinant;
      rise[k] = cross / information[k];
      chi[k] = total - cross * cross / information[k];
      if (cross > 0 && (!(rise[best] > 0) || chi[k] < chi[best])) {
        best = k;
      }
    }
    double low = rise[best];
    double high = rise[best];
    for (int k = 0; k < taus.length; k++) {
      double room = (k == 0 ? AT_THE_EDGE : CHI_SQUARED_95) - (chi[k] - chi[best]);
      if (room >= 0 && rise[k] > 0) {
        double half = Math.sqrt(room / information[k]);
        low = Math.min(low, rise[k] - half);
        high = Math.max(high, rise[k] + half);
      }
    }
    double common = CHI_SQUARED_95 * commonRelativeVariance * rise[best] * rise[best];
    double below = Math.hypot(rise[best] - low, Math.sqrt(common));
    double above = Math.hypot(high - rise[best], Math.sqrt(common));
    return new SettledRise(
        rise[best], new Interval(rise[best] - below, rise[best] + above), taus[best]);
  }

  private static double quadraticForm(
      double i, double c, double vII, double vCC, double vIC, double determinant) {
    return (vCC * i * i + vII * c * c - 2 * vIC * i * c) / determinant;
  }

  private static double[] timeConstants(DetectionSettings settings) {
    double[] searched = settings.bodyTimeConstantsSeconds();
    double least = searched[0];
    double most = searched[searched.length - 1];
    if (most <= least) {
      return new double[] {least};
    }
    double from = Math.max(least, settings.periodSeconds() / 1000);
    double[] taus = new double[STEPS];
    taus[0] = least;
    for (int k = 1; k < STEPS; k++) {
      taus[k] = from * Math.pow(most / from, (k - 1.0) / (STEPS - 2));
    }
    return taus;
  }
}
