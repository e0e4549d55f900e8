package railglow.thermal;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;
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

  /** A strong source's rise is known better than a step of the time constant changes it. */
  private static final int ZOOMS = 2;

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
    double total = quadraticForm(inPhase, quadrature, vII, vCC, vIC, determinant);
    DoubleFunction<Fit> fitAt =
        tau -> {
          FirstOrderResponse g = settings.response(tau);
          double i = g.inPhase();
          double c = g.quadrature();
          double information = quadraticForm(i, c, vII, vCC, vIC, determinant);
          double cross =
              (vCC * i * inPhase + vII * c * quadrature - vIC * (i * quadrature + c * inPhase))
                  / determinant;
          double rise = cross / information;
          return new Fit(tau, rise, total - cross * rise, information);
        };
    List<Fit> fits = new ArrayList<>();
    double[] taus = timeConstants(settings);
    for (double tau : taus) {
      fits.add(fitAt.apply(tau));
    }
    Fit best = best(fits);
    for (int zoom = 0; zoom < ZOOMS && taus.length > 1; zoom++) {
      taus = between(taus, best.tau);
      for (double tau : taus) {
        fits.add(fitAt.apply(tau));
      }
      best = best(fits);
    }
    double low = best.rise;
    double high = best.rise;
    for (Fit fit : fits) {
      double room =
          (fit.tau == fits.get(0).tau ? AT_THE_EDGE : CHI_SQUARED_95) - (fit.chi - best.chi);
      if (room >= 0 && fit.rise > 0) {
        double half = Math.sqrt(room / fit.information);
        low = Math.min(low, fit.rise - half);
        high = Math.max(high, fit.rise + half);
      }
    }
    double common = CHI_SQUARED_95 * commonRelativeVariance * best.rise * best.rise;
    double below = Math.hypot(best.rise - low, Math.sqrt(common));
    double above = Math.hypot(high - best.rise, Math.sqrt(common));
    return new SettledRise(best.rise, new Interval(best.rise - below, best.rise + above), best.tau);
  }

  /** What a time constant makes of the amplitudes. */
  private record Fit(double tau, double rise, double chi, double information) {}

  private static Fit best(List<Fit> fits) {
    Fit best = fits.get(0);
    for (Fit fit : fits) {
      if (fit.rise > 0 && (!(best.rise > 0) || fit.chi < best.chi)) {
        best = fit;
      }
    }
    return best;
  }

  /** The same number of steps from the neighbour before to the neighbour after. */
  private static double[] between(double[] taus, double tau) {
    int at = 0;
    while (at < taus.length - 1 && taus[at] < tau) {
      at++;
    }
    double from = taus[Math.max(0, at - 1)];
    double to = taus[Math.min(taus.length - 1, at + 1)];
    double[] steps = new double[STEPS];
    for (int k = 0; k < STEPS; k++) {
      steps[k] = from + (to - from) * k / (STEPS - 1);
    }
    return steps;
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
