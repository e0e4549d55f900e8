package railglow.thermal;

import java.util.Arrays;
import java.util.Random;

/**
 * A picture of an odd size, no multiple of what loops take at a time, and what noise makes of it.
 */
final class SmallPicture {
  static final int WIDTH = 61;
  static final int HEIGHT = 47;
  static final int PIXELS = WIDTH * HEIGHT;

  private SmallPicture() {}

  /** White noise of 1. */
  static float[] noise(long seed) {
    Random random = new Random(seed);
    float[] plane = new float[PIXELS];
    for (int i = 0; i < PIXELS; i++) {
      plane[i] = (float) random.nextGaussian();
    }
    return plane;
  }

  /** Moments of noise over some cycles, seeds of both channels from these on. */
  static ChannelMoments moments(int cycles, long seedI, long seedC) {
    ChannelMoments moments = new ChannelMoments(PIXELS);
    for (int cycle = 0; cycle < cycles; cycle++) {
      moments.add(noise(seedI + cycle), noise(seedC + cycle));
    }
    return moments;
  }

  /** A scale of 1 at every pixel. */
  static float[] evenScale() {
    float[] scale = new float[PIXELS];
    Arrays.fill(scale, 1);
    return scale;
  }

  /** What a filter of 1.5 pixels would take for the noise of such moments. */
  static PooledNoise pooled(ChannelMoments moments) {
    SpreadTable spread = SpreadTable.of(2.0 * (moments.cycles() - 1));
    return PooledNoise.of(moments, evenScale(), WIDTH, 1.5, spread, null, 1);
  }

  /** The directions searched in such noise, periods of 2 s. */
  static DelayArc arc(PooledNoise noise) {
    return DelayArc.of(DetectionSettings.usual(2, 0, 0.05, 4, 30), noise);
  }

  /** Their rule at that width. */
  static ScoreRule rule(ChannelMoments moments) {
    PooledNoise noise = pooled(moments);
    return new ScoreRule(noise, arc(noise), moments, evenScale(), WIDTH, 1.5, null);
  }
}
