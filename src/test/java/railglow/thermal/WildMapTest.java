package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class WildMapTest {
  private static final int WIDTH = 160;
  private static final int HEIGHT = 120;

  /** Noise of 1 everywhere and of 6 in the left third. */
  private static ChannelMoments moments(int cycles) {
    SplittableRandom random = new SplittableRandom(5);
    ChannelMoments moments = new ChannelMoments(WIDTH * HEIGHT);
    MatchedFilter filter = new MatchedFilter(WIDTH, HEIGHT, 1.5);
    float[][] planes = new float[2][WIDTH * HEIGHT];
    float[][] filtered = new float[2][WIDTH * HEIGHT];
    for (int k = 0; k < cycles; k++) {
      for (int c = 0; c < 2; c++) {
        for (int i = 0; i < planes[c].length; i++) {
          planes[c][i] = (float) (random.nextGaussian() * (i % WIDTH < WIDTH / 3 ? 6 : 1));
        }
        filter.apply(planes[c], filtered[c]);
      }
      moments.add(filtered[0], filtered[1]);
    }
    return moments;
  }

  private static float[] scale() {
    return new MatchedFilter(WIDTH, HEIGHT, 1.5).scale();
  }

  private static PooledNoise noise(ChannelMoments moments) {
    SpreadTable spread = SpreadTable.of(2.0 * (moments.cycles() - 1));
    return PooledNoise.of(moments, scale(), WIDTH, 1.5, spread, null, 1);
  }

  @Test
  void wildPixelsAreReckonedWithWhereTheyAreAndHardlyElsewhere() {
    ChannelMoments moments = moments(6);
    for (boolean withoutFirst : new boolean[] {false, true}) {
      WildMap map = WildMap.of(moments, scale(), WIDTH, 1.5, noise(moments), withoutFirst);
      assertTrue(map.shareAt(60 * WIDTH + 20) > 0.7, "in the middle of them");
      assertTrue(map.shareAt(60 * WIDTH + 130) < 0.01, "far from them");
      assertTrue(map.shareAt(60 * WIDTH + 130) > WildMap.LEAST_SHARE, "never none");
    }
  }

  @Test
  void whatSomePixelsDoLeavesTheNoiseOfTheOthersAlone() {
    PooledNoise noise = noise(moments(12));
    assertEquals(1, noise.varianceI(), 0.15);
    assertTrue(noise.priorDegrees() > 30, "prior degrees " + noise.priorDegrees());
    assertTrue(noise.wildShare() > 0.3, "share " + noise.wildShare());
  }
}
