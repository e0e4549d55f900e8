package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class FieldFamilyTest {
  private static FieldFamily single(int size, double sigma) {
    return new FieldFamily(
        size, size, new double[] {sigma}, new double[] {Double.POSITIVE_INFINITY}, 0, 1);
  }

  private static double scoreAt(FieldFamily family, double error) {
    double low = 2;
    double high = 9;
    for (int i = 0; i < 60; i++) {
      double middle = (low + high) / 2;
      if (family.expectedPeaks(middle) > error) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return high;
  }

  /**
   * Simulated 5 % points of the largest value of a smoothed 128 x 128 field, full width 2, 3, 6, 10
   * pixels (numpy, 4000 runs, seed 3): 4.489, 4.420, 4.149, 3.912, where the smooth-field formula
   * of Worsley et al. (1992) gives 4.718, 4.534, 4.199, 3.931 and Bonferroni 4.523.
   */
  @Test
  void theLatticeCorrectionMeetsTheSimulatedThresholds() {
    double[] fullWidths = {2, 3, 6, 10};
    double[] simulated = {4.489, 4.420, 4.149, 3.912};
    for (int k = 0; k < fullWidths.length; k++) {
      double sigma = fullWidths[k] / (2 * Math.sqrt(2 * Math.log(2)));
      assertEquals(simulated[k], scoreAt(single(128, sigma), 0.05), 0.04);
    }
  }

  /**
   * The smooth field: 4 ln 2 (2 pi)^-1.5 z exp(-z^2/2) per resel, so 0.04895 above 3.8 for 100
   * resels, and 5 % at 3.794 (Worsley et al., J. Cereb. Blood Flow Metab. 12, 1992, p. 900; 3.79 in
   * public teaching code for it). The picture's edges, which that formula leaves out, add a peak
   * along an edge, (2 pi)^-1 exp(-z^2/2) sqrt(4 ln 2) per full width, and one in a corner.
   */
  @Test
  void aSmoothFieldHasThePublishedPeaks() {
    double fullWidth = 120;
    int side = 1201;
    FieldFamily smooth = single(side, fullWidth / (2 * Math.sqrt(2 * Math.log(2))));
    for (double z : new double[] {3.8, 3.794}) {
      double edge = 2 * 10 * Math.sqrt(4 * Math.log(2)) * Math.exp(-z * z / 2) / (2 * Math.PI);
      double inside = smooth.expectedPeaks(z) - edge - NormalScore.upperTail(z);
      assertEquals(z == 3.8 ? 0.04895 : 0.05, inside, 1e-3 * 0.05);
    }
  }

  /** Bonferroni 10 000 pixels: 4.417, in public teaching code for Worsley's method. */
  @Test
  void independentPixelsGiveBonferroni() {
    assertEquals(4.417, scoreAt(single(100, 0.05), 0.05), 0.005);
    assertTrue(scoreAt(single(100, 1.3), 0.05) < 4.417);
  }

  @Test
  void theBoundFallsWithTheScore() {
    FieldFamily family =
        new FieldFamily(
            256,
            192,
            new double[] {1.5, 3, 6},
            new double[] {20, 50, Double.POSITIVE_INFINITY},
            1.5,
            6);
    double last = Double.POSITIVE_INFINITY;
    for (double z = 2; z < 12; z += 0.1) {
      double now = family.expectedPeaks(z);
      assertTrue(now < last && now > 0);
      last = now;
    }
  }

  /** Pixels, widths and directions together, against the maximum over simulated fields. */
  @Test
  void widthsAndDirectionsAreCountedForWhatTheyAreWorth() {
    int width = 96;
    int height = 72;
    double[] sigmas = {1.5, 2.1, 3.0};
    double arc = 1.4;
    int directions = 5;
    double[] known = {Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY};
    FieldFamily family = new FieldFamily(width, height, sigmas, known, arc, directions);
    double threshold = scoreAt(family, 0.2);
    SplittableRandom random = new SplittableRandom(21);
    int runs = 600;
    int above = 0;
    float[][] fields = new float[2][width * height];
    float[][] filtered = new float[2][width * height];
    for (int run = 0; run < runs; run++) {
      for (float[] field : fields) {
        for (int i = 0; i < field.length; i++) {
          field[i] = (float) random.nextGaussian();
        }
      }
      double largest = 0;
      for (double sigma : sigmas) {
        MatchedFilter filter = new MatchedFilter(width, height, sigma);
        filter.apply(fields[0], filtered[0]);
        filter.apply(fields[1], filtered[1]);
        for (int j = 0; j < directions; j++) {
          double a = Math.cos(arc * j / (directions - 1));
          double b = Math.sin(arc * j / (directions - 1));
          for (int i = 0; i < filtered[0].length; i++) {
            largest = Math.max(largest, a * filtered[0][i] + b * filtered[1][i]);
          }
        }
      }
      above += largest > threshold ? 1 : 0;
    }
    // 1 - exp(-0.2) of the runs, within three standard errors
    assertEquals(0.181, above / (double) runs, 3 * Math.sqrt(0.18 * 0.82 / runs));
  }

  @Test
  void fewDegreesOfFreedomRoughenTheField() {
    double[] few = new double[] {9};
    FieldFamily rough = new FieldFamily(128, 128, new double[] {3}, few, 0, 1);
    assertTrue(scoreAt(rough, 0.05) > scoreAt(single(128, 3), 0.05) + 0.1);
    double bonferroni = NormalScore.ofUpperTail(0.05 / (128 * 128));
    assertTrue(scoreAt(rough, 0.05) <= bonferroni + 1e-6);
    assertEquals(9, Arrays.stream(few).sum());
  }
}
