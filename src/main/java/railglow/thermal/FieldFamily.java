package railglow.thermal;

import java.util.Arrays;
import org.apache.commons.math3.special.Gamma;

/**
 * The family of all tests of one look: pixels x widths x directions in the (I, C) plane. Gives the
 * probability that the largest of all their normal scores passes z by noise alone. Immutable.
 *
 * <p>The expected number of peaks above z of a smooth Gaussian field (expected Euler
 * characteristic, Worsley et al., J. Cereb. Blood Flow Metab. 12, 1992, p. 900; with scale as a
 * further axis Siegmund and Worsley, Ann. Stat. 23, 1995, p. 608), corrected for the lattice: a
 * peak that is a parabola is only seen at lattice points, so its height there is lower by z r d^2/2
 * with r its curvature and d the distance to the nearest point, at most half a step. On average
 * this gives per axis the factor sqrt(2 pi)/x (2 Phi(x/2)-1), x = z step sqrt(r). With a coarse
 * lattice this becomes Bonferroni's bound, with a fine one the smooth field; it is never above
 * either.
 */
final class FieldFamily {
  private static final double TWO_PI = 2 * Math.PI;

  /** With so many degrees of freedom t is normal. */
  private static final double KNOWN = 1e5;

  private final int width;
  private final int height;
  private final double[] sigmas;
  private final double[] degreesOfFreedom;
  private final double[] logNorms;
  private final double arcRadians;
  private final int directions;

  /**
   * @param degreesOfFreedom of the t behind the scores, one per width; infinite when known
   * @param arcRadians angle spanned by the directions, after whitening
   * @param directions how many are tried, evenly over the arc
   */
  FieldFamily(
      int width,
      int height,
      double[] sigmas,
      double[] degreesOfFreedom,
      double arcRadians,
      int directions) {
    this.width = width;
    this.height = height;
    this.sigmas = sigmas.clone();
    this.degreesOfFreedom = degreesOfFreedom.clone();
    this.arcRadians = arcRadians;
    this.directions = directions;
    logNorms = Arrays.stream(degreesOfFreedom).map(FieldFamily::logNorm).toArray();
  }

  /** Of the density of t, over that of a normal one; of few degrees of freedom only. */
  private static double logNorm(double nu) {
    return nu < KNOWN
        ? Gamma.logGamma((nu + 1) / 2) - Gamma.logGamma(nu / 2) - 0.5 * Math.log(nu / 2)
        : 0;
  }

  /** Expected number of peaks above z: an upper bound, above 1 for low z, of the probability. */
  double expectedPeaks(double z) {
    double[] density = densities(z);
    int n = sigmas.length;
    double total = 0;
    double[] rough = new double[n];
    double[] here = new double[n];
    double[] oneMore = new double[n];
    for (int i = 0; i < n; i++) {
      rough[i] = Math.sqrt(roughening(i, z));
      Extent extent = extent(i, z, rough[i]);
      here[i] = extent.peaks(density, 0);
      oneMore[i] = extent.peaks(density, 1);
    }
    total += (here[0] + here[n - 1]) / 2;
    for (int i = 0; i + 1 < n; i++) {
      double step = Math.log(sigmas[i + 1] / sigmas[i]);
      total += step * rough[i] * lattice(z * step * rough[i]) * (oneMore[i] + oneMore[i + 1]) / 2;
    }
    return Math.min(total, tests() * NormalScore.upperTail(z));
  }

  private double tests() {
    return (double) width * height * sigmas.length * directions;
  }

  /** min(1, expected peaks). */
  double probabilityAbove(double z) {
    return z <= 1 ? 1 : Math.min(1, expectedPeaks(z));
  }

  /**
   * How large the family is at one width, in units of a peak: across and down, and over the arc.
   */
  private record Extent(double across, double down, double around) {
    double peaks(double[] density, int axesBefore) {
      double sum = 0;
      double[] plane = {1, across + down, across * down};
      for (int axes = 0; axes <= 2; axes++) {
        sum += plane[axes] * (density[axes + axesBefore] + around * density[axes + axesBefore + 1]);
      }
      return sum;
    }
  }

  private Extent extent(int i, double z, double rough) {
    double root = rough / (sigmas[i] * Math.sqrt(2));
    double perPixel = root * lattice(z * root);
    double across = (width - 1) * perPixel;
    double down = (height - 1) * perPixel;
    double step = directions > 1 ? arcRadians / (directions - 1) : 0;
    double around = directions > 1 ? arcRadians * rough * lattice(z * step * rough) : 0;
    return new Extent(across, down, around);
  }

  private static double lattice(double x) {
    if (x < 1e-6) {
      return 1;
    }
    return Math.sqrt(TWO_PI) / x * (1 - 2 * NormalScore.upperTail(x / 2));
  }

  /**
   * Euler characteristic densities of a Gaussian field of unit roughness in 0 to 4 dimensions, each
   * at least 0.
   */
  private static double[] densities(double z) {
    double e = Math.exp(-z * z / 2);
    return new double[] {
      NormalScore.upperTail(z),
      e / TWO_PI,
      z * e / Math.pow(TWO_PI, 1.5),
      Math.max(0, z * z - 1) * e / Math.pow(TWO_PI, 2),
      Math.max(0, z * z * z - 3 * z) * e / Math.pow(TWO_PI, 2.5)
    };
  }

  /**
   * How much rougher a field of t is than a Gaussian one near peaks of the same score: the ratio of
   * their densities in two dimensions (Worsley, Adv. Appl. Prob. 26, 1994, p. 13).
   */
  private double roughening(int i, double z) {
    double nu = degreesOfFreedom[i];
    if (!(nu < KNOWN)) {
      return 1;
    }
    double t = NormalScore.aboutT(z, nu);
    double logT = logNorms[i] + Math.log(t) - (nu - 1) / 2 * Math.log1p(t * t / nu);
    double logZ = Math.log(z) - z * z / 2;
    return Math.max(1, Math.exp(Math.min(20, logT - logZ)));
  }
}
