package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class NormalScoreTest {
  /** Abramowitz, Stegun (1964), table 26.1: upper tails of the normal at 1 to 6. */
  @Test
  void upperTailsAreTheHandbooks() {
    double[] tails = {
      1.586553e-1, 2.275013e-2, 1.349898e-3, 3.167124e-5, 2.866516e-7, 9.865876e-10
    };
    for (int z = 1; z <= 6; z++) {
      assertEquals(tails[z - 1], NormalScore.upperTail(z), 1e-6 * tails[z - 1]);
      assertEquals(z, NormalScore.ofUpperTail(tails[z - 1]), 1e-6);
    }
  }

  /** NIST/SEMATECH e-Handbook, 1.3.6.7.2: t at .975 for 1, 2, 5, 10, 20, 30, 60, 120 degrees. */
  @Test
  void quantilesOfTAreTheHandbooks() {
    double[] degrees = {1, 2, 5, 10, 20, 30, 60, 120};
    double[] t = {12.706205, 4.302653, 2.570582, 2.228139, 2.085963, 2.042272, 2.000298, 1.979930};
    for (int k = 0; k < t.length; k++) {
      assertEquals(t[k], NormalScore.toT(1.959964, degrees[k]), 2e-6 * t[k]);
      assertEquals(1.959964, NormalScore.ofT(t[k], degrees[k]), 2e-6);
    }
  }

  /**
   * Bonferroni over pictures of 4800 to 307 200 pixels, 5 %: z and t with 9, 29, 99 degrees (scipy
   * 1.17: norm.isf(.05/m), t.isf(.05/m, df)).
   */
  @Test
  void wholePictureThresholdsAgreeWithAnotherLibrary() {
    int[] pixels = {4800, 19200, 49152, 76800, 110592, 307200};
    double[] z = {4.2558, 4.5562, 4.7500, 4.8394, 4.9114, 5.1080};
    double[][] t = {
      {8.061, 9.558, 10.698, 11.280, 11.776, 13.270},
      {5.071, 5.570, 5.911, 6.074, 6.207, 6.584},
      {4.470, 4.819, 5.048, 5.155, 5.241, 5.479}
    };
    double[] degrees = {9, 29, 99};
    for (int k = 0; k < pixels.length; k++) {
      double score = NormalScore.ofUpperTail(0.05 / pixels[k]);
      assertEquals(z[k], score, 1e-4 * z[k]);
      for (int d = 0; d < degrees.length; d++) {
        assertEquals(t[d][k], NormalScore.toT(score, degrees[d]), 1e-3 * t[d][k]);
      }
    }
  }

  @Test
  void hugeValuesStayFiniteAndOrdered() {
    double last = 0;
    for (double t = 1; t < 1e6; t *= 3) {
      double score = NormalScore.ofT(t, 40);
      assertEquals(true, score > last && score < 1e4);
      last = score;
    }
    assertEquals(0, NormalScore.ofT(5, 0));
  }

  @Property(tries = 300, seed = "1")
  void theTableFollowsTheExactScore(
      @ForAll @DoubleRange(min = -60, max = 60) double t,
      @ForAll @DoubleRange(min = 1, max = 500) double degrees) {
    double exact = NormalScore.ofT(t, degrees);
    assertEquals(exact, NormalScore.Table.of(degrees).score(t), 0.01 + 0.002 * Math.abs(exact));
  }
}
