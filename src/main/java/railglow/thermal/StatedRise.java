package railglow.thermal;

import java.util.ArrayList;
import java.util.List;

/**
 * The settled rise of a fitted source with all that is known to be uncertain of it: noise, the
 * model in time ({@link SettledRise}) and the shape. Not thread-safe.
 */
final class StatedRise {
  /** Shares of a source's width in which its rise is looked at again, one and two filters down. */
  private static final double[] NEARER = {Math.sqrt(0.5), 0.5};

  private static final int FITTED = 4;

  private final MeanPlanes planes;
  private final DetectionSettings settings;

  StatedRise(MeanPlanes planes, DetectionSettings settings) {
    this.planes = planes;
    this.settings = settings;
  }

  /**
   * @param share of the amplitudes that selection left true
   * @param statistics of the filter by which it was found
   */
  SettledRise of(FoundSource found, double share, WidthStatistics statistics) {
    GaussianFit fit = found.fit();
    PooledNoise noise = statistics.noise();
    double variance = 1.0 / planes.cycles();
    double square = fit.amplitude() * fit.amplitude();
    double known = variance / (fit.energy() * square);
    double whole = variance * fit.covariance()[0][0] / square;
    double shape = Math.max(0, whole - known) * misfit(found, statistics);
    return SettledRise.of(
            amplitudes(share, found.blob(), noise, variance / fit.energy()), shape, settings)
        .withShapes(nearerTheMiddle(found, share, noise));
  }

  /**
   * How many times as far as noise alone the picture is from the fitted shape, squared; 1 where it
   * is no farther. What the fit leaves unexplained is taken for the size of its errors (Birge,
   * Phys. Rev. 40, 1932, p. 207).
   */
  private double misfit(FoundSource found, WidthStatistics statistics) {
    double a = statistics.arc().weightI()[found.direction()];
    double b = statistics.arc().weightC()[found.direction()];
    GaussianFit.Window window = window(found, statistics.sigma(), a, b);
    int pixels = 0;
    for (boolean valid : window.valid()) {
      pixels += valid ? 1 : 0;
    }
    double reduced =
        planes.cycles() * found.fit().squaredMisfit(window) / Math.max(1, pixels - FITTED);
    return Math.max(1, reduced);
  }

  /** The amplitudes of a blob after a share of them was lost to selection. */
  private static Amplitudes amplitudes(double share, Blob blob, PooledNoise noise, double perUnit) {
    return new Amplitudes(
        share * blob.inPhase(),
        share * blob.quadrature(),
        noise.varianceI() * perUnit,
        noise.varianceC() * perUnit,
        noise.covariance() * perUnit);
  }

  /**
   * Rises by weights narrower than the source, which see its middle truer and noisier. A weight
   * narrower by a factor f sees of a Gaussian 2 / (1 + f^2) of its amplitude, the ratio of the
   * integrals of shape times weight and of weight squared.
   */
  private List<SettledRise> nearerTheMiddle(FoundSource found, double share, PooledNoise noise) {
    GaussianFit fit = found.fit();
    List<SettledRise> rises = new ArrayList<>();
    for (double f : NEARER) {
      double sigma = f * fit.sigma();
      double gain = (1 + f * f) / 2;
      GaussianFit.Window inPhase = window(found, sigma, 1, 0);
      GaussianFit.Window quadrature = window(found, sigma, 0, 1);
      double energy = GaussianFit.energy(inPhase, fit.column(), fit.row(), sigma);
      double i = GaussianFit.bestAmplitude(inPhase, fit.column(), fit.row(), sigma);
      double c = GaussianFit.bestAmplitude(quadrature, fit.column(), fit.row(), sigma);
      if (energy > 0) {
        Blob middle = new Blob(fit.column(), fit.row(), sigma, gain * i, gain * c);
        double perUnit = gain * gain / (planes.cycles() * energy);
        rises.add(SettledRise.ofOneBody(amplitudes(share, middle, noise, perUnit), settings));
      }
    }
    return rises;
  }

  private GaussianFit.Window window(FoundSource found, double sigma, double a, double b) {
    Candidate at = found.candidate();
    return planes.window(at.column(), at.row(), sigma, a, b, found.others());
  }
}
