package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;

/** The fit of a place against published bounds and against another library's. */
class GaussianFitTest {
  private static final double PEAK = 1;
  private static final double SIGMA = 2;
  private static final double NOISE = 0.1;

  private static GaussianFit.Window window(
      int side, double column, double row, IntToDoubleFunction noise) {
    double[] values = new double[side * side];
    for (int i = 0; i < values.length; i++) {
      double r2 = Math.pow(i % side - column, 2) + Math.pow(i / side - row, 2);
      values[i] = PEAK * Math.exp(-r2 / (2 * SIGMA * SIGMA)) + noise.applyAsDouble(i);
    }
    boolean[] valid = new boolean[values.length];
    Arrays.fill(valid, true);
    return new GaussianFit.Window(0, 0, side, side, values, valid);
  }

  private static GaussianFit clean() {
    return GaussianFit.of(window(41, 20, 20, i -> 0), 20.3, 19.8, 1.7);
  }

  /**
   * sqrt(2/pi) noise/peak per axis, whatever the width (Condon, PASP 109, 1997, p. 166, for a round
   * Gaussian and pixels of unit size); numerically 0.0797885 pixels.
   */
  @Test
  void theStatedPlaceHasTheErrorOfCramerAndRao() {
    double expected = Math.sqrt(2 / Math.PI) * NOISE / PEAK;
    assertEquals(0.0797885, expected, 1e-7);
    assertEquals(expected, NOISE * Math.sqrt(clean().covariance()[1][1]), 1e-6);
    assertEquals(expected, NOISE * Math.sqrt(clean().covariance()[2][2]), 1e-6);
  }

  /**
   * The same as the localisation literature has it, for a spot of N = 2 pi A s^2 counts over a
   * background of b per pixel of size a: variance 8 pi s^4 b^2/(a^2 N^2) (Thompson, Larson, Webb,
   * Biophys. J. 82, 2002, p. 2775; Mortensen et al., Nat. Methods 7, 2010, p. 377).
   */
  @Test
  void theErrorIsThatOfLocalisationBeforeABackground() {
    double counts = 2 * Math.PI * PEAK * SIGMA * SIGMA;
    double variance = 8 * Math.PI * Math.pow(SIGMA, 4) * NOISE * NOISE / (counts * counts);
    assertEquals(variance, NOISE * NOISE * clean().covariance()[1][1], 1e-6 * variance);
  }

  /**
   * What a matched filter makes of it: signal to noise A s sqrt(pi)/noise, 35.449 here, from the
   * sum of the squared shape; the error of the place is s sqrt(2) over it (Condon), that of the
   * peak at a known width noise/(s sqrt(pi)), 0.0282095.
   */
  @Test
  void theSignalToNoiseRatioIsTheRootOfTheShapesEnergy() {
    double ratio = PEAK * Math.sqrt(clean().energy()) / NOISE;
    assertEquals(35.449, ratio, 1e-3);
    assertEquals(0.0282095, NOISE / Math.sqrt(clean().energy()), 1e-7);
    assertEquals(SIGMA * Math.sqrt(2) / ratio, NOISE * Math.sqrt(clean().covariance()[1][1]), 1e-6);
  }

  @Test
  void thePlaceScattersAsMuchAsIsStated() {
    SplittableRandom random = new SplittableRandom(64);
    int fits = 1500;
    double squares = 0;
    double stated = 0;
    for (int k = 0; k < fits; k++) {
      double column = 10 + random.nextDouble() - 0.5;
      double row = 10 + random.nextDouble() - 0.5;
      GaussianFit fit =
          GaussianFit.of(
              window(21, column, row, i -> NOISE * random.nextGaussian()), 10, 10, SIGMA);
      squares += Math.pow(fit.column() - column, 2) + Math.pow(fit.row() - row, 2);
      stated += NOISE * NOISE * (fit.covariance()[1][1] + fit.covariance()[2][2]);
    }
    double rms = Math.sqrt(squares / (2 * fits));
    assertEquals(0.0797885, rms, 0.05 * 0.0797885);
    assertEquals(Math.sqrt(stated / (2 * fits)), rms, 0.05 * rms);
  }

  /**
   * SciPy 1.17.1: scipy.optimize.curve_fit(a exp(-((x-c)^2+(y-r)^2)/(2 s^2)), p0=[0.8, 7, 7, 1.5],
   * sigma=ones, absolute_sigma=True, ftol=xtol=gtol=1e-15) on 15 x 15 pixels, row by row: a = 1, c
   * = 7.3, r = 6.6, s = 2, plus 0.3 (u - 0.5) with u of the generator of NIST SP 1065, section
   * 12.4.
   */
  @Test
  void anotherLibraryFitsTheSame() {
    long[] n = {1234567890};
    GaussianFit fit =
        GaussianFit.of(
            window(
                15,
                7.3,
                6.6,
                i -> {
                  double u = n[0] / 2147483647.0;
                  n[0] = 16807 * n[0] % 2147483647;
                  return 0.3 * (u - 0.5);
                }),
            7,
            7,
            1.5);
    assertEquals(0.99823443866309, fit.amplitude(), 1e-8);
    assertEquals(7.25782277931743, fit.column(), 1e-7);
    assertEquals(6.67290682899852, fit.row(), 1e-7);
    assertEquals(2.00371901748574, fit.sigma(), 1e-7);
    double[] errors = {0.39820619196816, 0.79929711124616, 0.79929737821759, 0.56520174944665};
    for (int k = 0; k < errors.length; k++) {
      assertEquals(errors[k], Math.sqrt(fit.covariance()[k][k]), 1e-6);
    }
    assertEquals(-0.159148013877737, fit.covariance()[0][3], 1e-6);
  }

  @Test
  void aWindowWithoutAValidPixelHasNoFit() {
    GaussianFit.Window none = new GaussianFit.Window(0, 0, 9, 9, new double[81], new boolean[81]);
    assertNull(GaussianFit.of(none, 4, 4, 2));
    assertNull(GaussianFit.of(window(9, 4, 4, i -> Double.NaN), 4, 4, 2));
  }
}
