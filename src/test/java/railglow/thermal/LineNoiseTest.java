package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;

class LineNoiseTest {
  private static final int WIDTH = 64;
  private static final int HEIGHT = 48;
  private static final int ROW = 20;

  private static LineNoise of(IntToDoubleFunction deviation, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    ChannelMoments moments = new ChannelMoments(WIDTH * HEIGHT);
    for (int cycle = 0; cycle < 5; cycle++) {
      float[] inPhase = new float[WIDTH * HEIGHT];
      float[] quadrature = new float[WIDTH * HEIGHT];
      for (int i = 0; i < inPhase.length; i++) {
        double each = deviation.applyAsDouble(i);
        inPhase[i] = (float) (each * random.nextGaussian());
        quadrature[i] = (float) (each * random.nextGaussian());
      }
      moments.add(inPhase, quadrature);
    }
    return LineNoise.of(moments, null, WIDTH, HEIGHT);
  }

  @Test
  void aRowOfTwiceTheNoiseStandsOutWithFourTimesTheVariance() {
    LineNoise lines = of(i -> i / WIDTH == ROW ? 2 : 1, 1);
    assertNotNull(lines);
    // the median of 64 variances of 8 degrees of freedom: 9 % standard error
    assertEquals(4, lines.rows()[ROW], 1.2);
    assertEquals(1, lines.rows()[ROW + 1]);
    assertEquals(1, lines.columns()[5]);
  }

  @Test
  void aPixelsDeviationGrowsByWhatTheFilterMixesIn() {
    float[] each = of(i -> i / WIDTH == ROW ? 3 : 1, 2).perDeviation(1.5);
    double sum = 0;
    for (int d = -10; d <= 10; d++) {
      sum += Math.exp(-d * d / (1.5 * 1.5));
    }
    assertEquals(1 / Math.sqrt(1 + 8 / sum), each[ROW * WIDTH + 30], 0.05);
    assertEquals(1, each[(ROW + 8) * WIDTH + 30], 1e-6);
  }

  @Test
  void aWildPlaceIsNoWildLine() {
    assertNull(of(i -> Math.hypot(i % WIDTH - 30, i / WIDTH - 20) < 6 ? 5 : 1, 3));
  }

  @Test
  void inWhiteNoiseHardlyALineStandsOut() {
    int pictures = 0;
    for (long seed = 10; seed < 60; seed++) {
      pictures += of(i -> 1, seed) == null ? 0 : 1;
    }
    int some = pictures;
    assertTrue(some <= 8, () -> some + " of 50 pictures");
  }
}
