package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import railglow.thermal.GaussianFit.Window;

class LevelFitTest {
  private static final int REACH = 3;

  private static Window window(DoubleUnaryOperator ofRadius, double noise, long seed) {
    int n = 2 * REACH + 1;
    SplittableRandom random = new SplittableRandom(seed);
    double[] values = new double[n * n];
    boolean[] valid = new boolean[n * n];
    for (int k = 0; k < values.length; k++) {
      double radius = Math.hypot(k % n - REACH, k / n - REACH);
      values[k] = ofRadius.applyAsDouble(radius) + noise * random.nextGaussian();
      valid[k] = true;
    }
    return new Window(0, 0, n, n, values, valid);
  }

  private static double gaussian(double radius, double sigma) {
    return Math.exp(-0.5 * radius * radius / (sigma * sigma));
  }

  @Test
  void aGaussianOnALevelIsSeenAsWhatItIs() {
    Window window = window(r -> 10 + 20 * gaussian(r, 1.6), 0, 1);
    LevelFit fit = LevelFit.of(window, REACH, REACH);
    assertEquals(1.6, fit.sigma(), 0.02);
    assertEquals(30, fit.middle(), 0.02);
    assertTrue(fit.isWithinNoise(1000));
  }

  /** A core on the skirt of heat in a sheet, which a bare Gaussian takes for one wide image. */
  @Test
  void itSeesTheMiddleOfAPointedImage() {
    Window window = window(r -> 12 * Math.exp(-r / 8) + 10 * gaussian(r, 1.5), 0, 1);
    double bare = GaussianFit.of(window, REACH, REACH, 2).amplitude();
    assertTrue(bare < 0.94 * 22, "bare " + bare);
    assertEquals(22, LevelFit.of(window, REACH, REACH).middle(), 0.04 * 22);
  }

  @Test
  void theErrorStatedIsTheErrorMade() {
    double squares = 0;
    double stated = 0;
    int runs = 300;
    for (int run = 0; run < runs; run++) {
      LevelFit fit = LevelFit.of(window(r -> 10 + 20 * gaussian(r, 1.6), 0.5, run), REACH, REACH);
      squares += (fit.middle() - 30) * (fit.middle() - 30) / runs;
      stated += 0.25 * (1 / fit.energy() + fit.widthVariance()) / runs;
    }
    assertEquals(1, squares / stated, 0.3);
  }

  @Test
  void aFlatToppedImageIsNotWithinTheNoise() {
    Window window = window(r -> r < 1.8 ? 50 : 5, 0.5, 1);
    LevelFit fit = LevelFit.of(window, REACH, REACH);
    assertFalse(fit != null && fit.isWithinNoise(4));
  }

  /** Dead pixels may leave a few that are all as far from the middle. */
  @Test
  void tooFewPixelsOrPixelsOfOneDistanceTellNoLevel() {
    Window whole = window(r -> 10 + 20 * gaussian(r, 1.6), 0, 1);
    for (double least = 0; least < 4; least += 0.1) {
      boolean[] valid = new boolean[whole.valid().length];
      for (int k = 0; k < valid.length; k++) {
        double radius = Math.hypot(k % whole.columns() - REACH, k / whole.columns() - REACH);
        valid[k] = radius >= least && radius < least + 0.1;
      }
      Window ring = new Window(0, 0, whole.columns(), whole.rows(), whole.values(), valid);
      assertNull(LevelFit.of(ring, REACH, REACH), "from " + least);
    }
    LevelFit constant = LevelFit.of(window(r -> 5, 0, 1), REACH, REACH);
    assertTrue(constant == null || Math.abs(constant.middle() - 5) < 1e-6, "a constant plane");
  }
}
