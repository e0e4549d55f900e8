package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TwinImagesTest {
  private static final int SIDE = 25;
  private static final double MIDDLE = 12;
  private static final double SIGMA = 2;

  /** 1.5 times the full width at half height. */
  private static final double APART = 1.5 * 2 * Math.sqrt(2 * Math.log(2)) * SIGMA;

  /** Signal to noise of a lone image of the height 1. */
  private static final double SCORE = 20;

  private static TwinImages.Pair pair(DoubleBinaryOperator shape, double score, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double scale = score / (SIGMA * Math.sqrt(Math.PI));
    double[] values = new double[SIDE * SIDE];
    for (int i = 0; i < values.length; i++) {
      values[i] =
          scale * shape.applyAsDouble(i % SIDE - MIDDLE, i / SIDE - MIDDLE) + random.nextGaussian();
    }
    boolean[] valid = new boolean[values.length];
    Arrays.fill(valid, true);
    return TwinImages.in(
        new GaussianFit.Window(0, 0, SIDE, SIDE, values, valid), MIDDLE, MIDDLE, 4.2, 1);
  }

  private static double spot(double dx, double dy) {
    return Math.exp(-(dx * dx + dy * dy) / (2 * SIGMA * SIGMA));
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 20, 45, 70, 90, 115, 160})
  void twoAtOneAndAHalfFullWidthsArePartedInAnyDirection(int degrees) {
    double x = Math.cos(Math.toRadians(degrees)) * APART / 2;
    double y = Math.sin(Math.toRadians(degrees)) * APART / 2;
    TwinImages.Pair pair =
        pair((dx, dy) -> spot(dx - x, dy - y) + 0.8 * spot(dx + x, dy + y), SCORE, degrees);
    assertNotNull(pair);
    assertEquals(MIDDLE + x, pair.stronger()[0], 1);
    assertEquals(MIDDLE + y, pair.stronger()[1], 1);
    assertEquals(MIDDLE - x, pair.weaker()[0], 1);
    assertEquals(MIDDLE - y, pair.weaker()[1], 1);
  }

  @Test
  void oneImageStaysOneOfWhateverProfile() {
    for (long seed = 1; seed <= 20; seed++) {
      for (double score : new double[] {6, 20, 500}) {
        assertNull(pair(TwinImagesTest::spot, score, seed), "round");
        assertNull(pair((x, y) -> Math.exp(-Math.hypot(x, y) / 3), score, seed), "long skirts");
        assertNull(pair((x, y) -> spot(0.5 * x, 0.5 * y), score, seed), "wide");
      }
    }
  }

  /** Eight pixels long and more, blurred by two: a part with a long body. */
  @Test
  void aDrawnOutImageIsNotTwo() {
    for (long seed = 1; seed <= 20; seed++) {
      for (int half : new int[] {3, 5, 7}) {
        assertNull(
            pair(
                (x, y) -> {
                  double sum = 0;
                  for (int k = -half; k <= half; k++) {
                    sum += spot(x - k, y) / (2 * half + 1);
                  }
                  return 2 * sum;
                },
                SCORE,
                seed),
            "half length " + half);
      }
    }
  }
}
