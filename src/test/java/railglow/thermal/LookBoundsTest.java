package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class LookBoundsTest {
  /** R rpact 3.3.4: getDesignGroupSequential(kMax=5, alpha=.025, typeOfDesign="asOF"). */
  @Test
  void obrienFlemingSpendingGivesTheBoundsOfAnotherProgram() {
    double[] expected = {4.8769, 3.3570, 2.6803, 2.2898, 2.0310};
    LookBounds bounds = LookBounds.of(1, 5, 0.025, 1.0);
    for (int k = 1; k <= 5; k++) {
      assertEquals(expected[k - 1], bounds.at(k), 2e-4);
    }
  }

  /**
   * Lan and DeMets, Biometrika 70 (1983) 659: the spending function alpha ln(1 + (e - 1) t), which
   * is near Pocock's bounds; R rpact 3.3.4: getDesignGroupSequential(kMax=5, alpha=.025,
   * typeOfDesign="asP").
   */
  @Test
  void spendingThatKeepsBoundsNearlyLevelGivesTheBoundsOfAnotherProgram() {
    double[] times = {0.2, 0.4, 0.6, 0.8, 1};
    double[] cumulative = new double[5];
    for (int k = 0; k < 5; k++) {
      cumulative[k] = 0.025 * Math.log1p((Math.E - 1) * times[k]);
    }
    double[] expected = {2.4380, 2.4268, 2.4102, 2.3966, 2.3860};
    assertArrayEquals(expected, LookBounds.boundsFor(times, cumulative), 3e-4);
  }

  /** Found in few steps, each level is the one that halving alone ends at. */
  @Test
  void boundsAreThoseOfHalvingAloneToTheBit() {
    for (double error : new double[] {0.1, 1e-6, 1e-15}) {
      CrossingRecursion quick = new CrossingRecursion();
      CrossingRecursion plain = new CrossingRecursion();
      double bound = 0;
      for (int k = 4; k <= 60; k++) {
        double spent = error / k;
        double expected = NormalScore.ofUpperTail(spent);
        if (k > 4) {
          double low = bound - 12;
          double high = Math.max(bound, 0) + 12;
          while (high - low > 1e-9 * Math.sqrt(k)) {
            double middle = (low + high) / 2;
            boolean below = plain.crossing(middle, 1) > spent;
            low = below ? middle : low;
            high = below ? high : middle;
          }
          expected = (low + high) / 2 / Math.sqrt(k);
        }
        double score = quick.boundSpending(k, spent);
        assertEquals(expected, score, error + " at " + k);
        bound = score * Math.sqrt(k);
        plain.advance(k, bound);
      }
    }
  }

  /** Lan and DeMets, Biometrika 70 (1983) 659: of .05, the error spent at t = .2 .4 .6 .8 1. */
  @Test
  void theErrorIsSpentAsPublished() {
    double[] cumulative = {1.1726e-5, 0.0019419, 0.0113964, 0.0284296, 0.05};
    LookBounds bounds = LookBounds.of(1, 5, 0.05, 1.0);
    double sum = 0;
    for (int k = 1; k <= 5; k++) {
      sum += bounds.spentAt(k);
      assertEquals(cumulative[k - 1], sum, 1e-4 * cumulative[k - 1]);
    }
  }

  /** GroupSeq vignette, task 1: three stages, one-sided .05: 0.00069 spent, bound 3.2 at first. */
  @Test
  void thePublishedExampleOfThreeStagesIsMet() {
    LookBounds bounds = LookBounds.of(1, 3, 0.05, 1.0);
    assertEquals(3.20010, bounds.at(1), 1e-4);
    assertEquals(0.00068689, bounds.spentAt(1), 1e-7);
  }

  /**
   * Pocock, Biometrika 64 (1977) 191, and O'Brien, Fleming, Biometrics 35 (1979) 549, as tabled by
   * Jennison and Turnbull (2000), tables 2.1 and 2.3; two-sided .05, so one-sided .025 but for
   * crossing both sides, which is beyond these digits.
   */
  @Test
  void constantBoundsSpendWhatTheTablesSay() {
    double[] pocock = {2.1783, 2.2895, 2.3613, 2.4132, 2.4532, 2.4855, 2.5124, 2.5352, 2.5550};
    double[] obrienFleming = {
      1.9774, 2.0040, 2.0243, 2.0401, 2.0528, 2.0633, 2.0722, 2.0798, 2.0865
    };
    for (int looks = 2; looks <= 10; looks++) {
      assertEquals(0.025, spent(constant(pocock[looks - 2], looks)), 4e-4);
      assertEquals(0.025, spent(falling(obrienFleming[looks - 2], looks)), 2e-4);
    }
  }

  /** The same tables, two-sided .01: a path that crosses both sides is rarer still. */
  @Test
  void constantBoundsSpendWhatTheTablesSayAtOnePercent() {
    double[] pocock = {2.7718, 2.8730, 2.9387, 2.9863};
    double[] obrienFleming = {2.5796, 2.5949, 2.6091, 2.6212};
    for (int looks = 2; looks <= 5; looks++) {
      assertEquals(0.005, spent(constant(pocock[looks - 2], looks)), 1e-5);
      assertEquals(0.005, spent(falling(obrienFleming[looks - 2], looks)), 1e-5);
    }
  }

  /** O'Brien and Fleming's bounds at five looks, and GroupSeq's vignette: three looks at 1.992. */
  @Test
  void theBoundsLookByLookAreThePublishedOnes() {
    double[] z = {4.5617, 3.2256, 2.6337, 2.2809, 2.0401};
    assertArrayEquals(z, falling(2.0401, 5), 2e-4);
    assertEquals(0.025, spent(z), 2e-4);
    assertEquals(0.05, spent(constant(1.992, 3)), 1e-4);
  }

  private static double[] constant(double z, int looks) {
    double[] scores = new double[looks];
    Arrays.fill(scores, z);
    return scores;
  }

  private static double[] falling(double last, int looks) {
    double[] scores = new double[looks];
    for (int k = 1; k <= looks; k++) {
      scores[k - 1] = last * Math.sqrt(looks / (double) k);
    }
    return scores;
  }

  /** One-sided error of bounds at evenly spaced looks. */
  private static double spent(double[] scores) {
    CrossingRecursion recursion = new CrossingRecursion();
    recursion.advance(1, scores[0]);
    double spent = NormalScore.upperTail(scores[0]);
    for (int k = 2; k <= scores.length; k++) {
      double level = scores[k - 1] * Math.sqrt(k);
      spent += recursion.crossing(level, 1);
      recursion.advance(k, level);
    }
    return spent;
  }

  /** Armitage, McPherson, Rowe, JRSS A 132 (1969) 235: looks at 1.96 two-sided; upper half here. */
  @Test
  void repeatedLooksAtTheSingleLookBoundInflateTheError() {
    double[] published = {0.0500, 0.0831, 0.1073, 0.1262, 0.1417, 0.1934, 0.2479};
    int[] looks = {1, 2, 3, 4, 5, 10, 20};
    for (int i = 0; i < looks.length; i++) {
      // both sides are exclusive but for paths that cross one and later the other
      assertEquals(published[i], 2 * spent(constant(1.959964, looks[i])), 0.004);
    }
  }

  @Test
  void looksCostLittleAtTheErrorOfOnePixel() {
    double single = NormalScore.ofUpperTail(1e-6);
    assertTrue(LookBounds.of(4, 30, 1e-6).at(30) / single < 1.04);
    assertTrue(LookBounds.of(4, 300, 1e-6).at(300) / single < 1.055);
  }

  /**
   * Wald, Sequential Analysis, 1947, appendix A.7: no test whose error is alpha and that misses
   * nothing takes less than log(1/alpha) over half the squared drift on average.
   */
  @Test
  void aSourceOfTwiceTheSmallestRiseIsCalledInLittleMoreThanTheLeastTime() {
    for (double alpha : new double[] {1e-5, 1e-7}) {
      LookBounds bounds = LookBounds.of(4, 30, alpha);
      double drift = 2 * (NormalScore.ofUpperTail(alpha) + 1.645) / Math.sqrt(30);
      double[] crossing = bounds.crossingProbabilities(drift);
      double mean = 0;
      for (int j = 0; j < crossing.length; j++) {
        mean += crossing[j] * (4 + j);
      }
      double least = Math.log(1 / alpha) / (drift * drift / 2);
      // a twentieth goes to the looks being whole cycles
      assertTrue(mean / least < 1.2, "alpha " + alpha + ": " + mean + " over " + least);
    }
  }

  @Test
  void aSimulationCrossesAsOftenAsTheBoundsAllow() {
    LookBounds bounds = LookBounds.of(3, 40, 0.05);
    SplittableRandom random = new SplittableRandom(11);
    int runs = 40_000;
    int crossed = 0;
    for (int run = 0; run < runs; run++) {
      double w = 0;
      for (int k = 1; k <= 40; k++) {
        w += random.nextGaussian();
        if (w / Math.sqrt(k) > bounds.at(k)) {
          crossed++;
          break;
        }
      }
    }
    assertEquals(0.05, crossed / (double) runs, 4 * Math.sqrt(0.05 * 0.95 / runs));
  }

  @Test
  void aDriftCrossesAsOftenAsASimulationSays() {
    LookBounds bounds = LookBounds.of(3, 40, 0.001);
    double drift = 0.6;
    double[] expected = bounds.crossingProbabilities(drift);
    SplittableRandom random = new SplittableRandom(12);
    int runs = 20_000;
    double[] seen = new double[expected.length];
    for (int run = 0; run < runs; run++) {
      double w = 0;
      for (int k = 1; k <= 40; k++) {
        w += drift + random.nextGaussian();
        if (w / Math.sqrt(k) > bounds.at(k)) {
          seen[k - 3]++;
          break;
        }
      }
    }
    double cumulative = 0;
    double simulated = 0;
    for (int j = 0; j < expected.length; j++) {
      cumulative += expected[j];
      simulated += seen[j] / runs;
      assertEquals(simulated, cumulative, 0.015);
    }
  }
}
