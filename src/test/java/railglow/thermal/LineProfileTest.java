package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.Test;

class LineProfileTest {
  private static final int SIDE = 31;
  private static final double MIDDLE = 15;
  private static final double SIGMA = 2;

  /** From the middle to either image: 1.5 full widths at half height in all, turned by 0.7. */
  private static final double HALF = 0.75 * 2 * Math.sqrt(2 * Math.log(2)) * SIGMA;

  private static final double X = HALF * Math.cos(0.7);
  private static final double Y = HALF * Math.sin(0.7);

  private static GaussianFit.Window window(DoubleBinaryOperator picture) {
    double[] values = new double[SIDE * SIDE];
    boolean[] valid = new boolean[values.length];
    Arrays.fill(valid, true);
    for (int i = 0; i < values.length; i++) {
      values[i] = picture.applyAsDouble(i % SIDE - MIDDLE, i / SIDE - MIDDLE);
    }
    return new GaussianFit.Window(0, 0, SIDE, SIDE, values, valid);
  }

  private static double spot(double dx, double dy) {
    return Math.exp(-(dx * dx + dy * dy) / (2 * SIGMA * SIGMA));
  }

  private static LineProfile line(GaussianFit.Window window) {
    return new LineProfile(window, MIDDLE - X, MIDDLE - Y, MIDDLE + X, MIDDLE + Y, SIGMA);
  }

  /**
   * Along the line a Gaussian of sigma stays one, of the root of sigma squared and 1: two of them a
   * distance d apart dip to 2 exp(-d^2/8s^2) of about their height.
   */
  @Test
  void twoImagesDipAsDeepAsTheirGaussiansSay() {
    GaussianFit.Window two = window((x, y) -> spot(x - X, y - Y) + spot(x + X, y + Y));
    double s2 = SIGMA * SIGMA + 1;
    double between = 2 * Math.exp(-HALF * HALF / (2 * s2));
    double atImages = 1 + Math.exp(-4 * HALF * HALF / (2 * s2));
    LineProfile line = line(two);
    assertEquals(between / atImages, line.at(0.5) / line.at(0), 0.01);
    assertEquals(line.at(0), line.at(1), 1e-3);
  }

  @Test
  void oneImageRisesAllTheWayToItsTop() {
    LineProfile line = line(window((x, y) -> spot(x - X, y - Y)));
    for (int k = 0; k < 10; k++) {
      assertTrue(line.at(k / 10.0) < line.at((k + 1) / 10.0), "at " + k);
    }
  }

  @Test
  void theNoiseOfADifferenceIsAsStated() {
    SplittableRandom random = new SplittableRandom(7);
    double squares = 0;
    int runs = 400;
    for (int run = 0; run < runs; run++) {
      LineProfile line = line(window((x, y) -> 0.3 * random.nextGaussian()));
      squares += Math.pow(line.at(0) - line.at(1), 2);
    }
    double stated = line(window((x, y) -> 0)).noiseOfDifference(0.3);
    // the scatter of 400 squares is a fourteenth, of their root half of that: three of them
    assertEquals(1, Math.sqrt(squares / runs) / stated, 0.11);
  }

  @Test
  void aWindowWithoutValidPixelsHasNoHeight() {
    GaussianFit.Window blind = new GaussianFit.Window(0, 0, 3, 3, new double[9], new boolean[9]);
    assertEquals(0, new LineProfile(blind, 0, 0, 2, 2, 1).at(0.5));
  }
}
