package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class WildLinesTest {
  private static final int WIDTH = 64;
  private static final int HEIGHT = 48;
  private static final int ROW = 20;
  private static final int COLUMN = 41;

  private static float[] white(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    float[] plane = new float[WIDTH * HEIGHT];
    for (int i = 0; i < plane.length; i++) {
      plane[i] = (float) random.nextGaussian();
    }
    return plane;
  }

  private static double meanOfRow(float[] plane, int row) {
    double sum = 0;
    for (int x = 0; x < WIDTH; x++) {
      sum += plane[row * WIDTH + x];
    }
    return sum / WIDTH;
  }

  private static double meanOfColumn(float[] plane, int column) {
    double sum = 0;
    for (int row = 0; row < HEIGHT; row++) {
      sum += plane[row * WIDTH + column];
    }
    return sum / HEIGHT;
  }

  @ParameterizedTest
  @ValueSource(doubles = {-30, -4, -1.2, 1.2, 2.5, 4, 30})
  void oneRowAndOneColumnUnlikeTheOthersLoseTheirWholePart(double offset) {
    for (long seed = 1; seed <= 20; seed++) {
      float[] plane = white(seed);
      for (int i = 0; i < plane.length; i++) {
        plane[i] += (float) (i / WIDTH == ROW ? offset : 0);
        plane[i] += (float) (i % WIDTH == COLUMN ? -offset : 0);
      }
      CommonParts.Removed removed = CommonParts.remove(plane, WIDTH, HEIGHT, null);
      assertTrue(removed.wildRows()[ROW] && removed.wildColumns()[COLUMN]);
      assertEquals(1, removed.shareOfRow(ROW));
      // no more is left than the mean of a white line of 64 pixels has
      assertEquals(0, meanOfRow(plane, ROW), 0.125);
      assertEquals(0, meanOfColumn(plane, COLUMN), 0.125);
    }
  }

  @Test
  void aWarmPlaceIsNoWildLineHoweverWarm() {
    for (double height : new double[] {0.5, 1, 3, 10, 100}) {
      for (double sigma : new double[] {1.5, 3, 5}) {
        float[] plane = white(7);
        Blob warm = new Blob(COLUMN, ROW, sigma, height, 0);
        for (int i = 0; i < plane.length; i++) {
          plane[i] += (float) (height * warm.shape(i % WIDTH, i / WIDTH));
        }
        CommonParts.Removed removed = CommonParts.remove(plane, WIDTH, HEIGHT, null);
        int wild = 0;
        for (int d = -10; d <= 10; d++) {
          wild += removed.wildRows()[ROW + d] ? 1 : 0;
          wild += removed.wildColumns()[COLUMN + d] ? 1 : 0;
        }
        int lines = wild;
        assertEquals(0, lines, () -> lines + " lines at " + height + " and " + sigma);
      }
    }
  }

  @Test
  void inWhiteNoiseHardlyALineIsWild() {
    int wild = 0;
    for (long seed = 1; seed <= 100; seed++) {
      CommonParts.Removed removed = CommonParts.remove(white(seed), WIDTH, HEIGHT, null);
      for (boolean is : removed.wildRows()) {
        wild += is ? 1 : 0;
      }
      for (boolean is : removed.wildColumns()) {
        wild += is ? 1 : 0;
      }
    }
    // 11 200 lines at 2 x 2.3e-4 each: 5 expected
    int lines = wild;
    assertTrue(lines <= 15, () -> lines + " lines");
  }

  @Test
  void maskedPixelsStayZeroInAWildLine() {
    float[] plane = white(3);
    float[] mask = new float[plane.length];
    for (int i = 0; i < plane.length; i++) {
      mask[i] = i % 7 == 0 ? 0 : 1;
      plane[i] += i / WIDTH == ROW ? 5 : 0;
    }
    CommonParts.Removed removed = CommonParts.remove(plane, WIDTH, HEIGHT, mask);
    assertTrue(removed.wildRows()[ROW]);
    assertFalse(removed.wildRows()[ROW + 1]);
    for (int i = 0; i < plane.length; i++) {
      assertTrue(mask[i] > 0 || plane[i] == 0);
    }
  }
}
