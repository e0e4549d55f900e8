package railglow.thermal;

import java.util.Arrays;

/**
 * The largest and the least mean over the directions of an arc, and its signed square, where all
 * pixels scatter alike: a square that grows with the mean need be made only once. Short loops over
 * one index, for the JIT compiler to make vectors of (decision 0090). Stateless.
 */
final class Extremes {
  private static final float AMPLE = 1.01f;

  private Extremes() {}

  /** The largest a I + b C at pixels from one to before another. */
  static void most(ChannelMoments moments, DelayArc arc, float[] most, int from, int to) {
    Arrays.fill(most, from, to, Float.NEGATIVE_INFINITY);
    for (int j = 0; j < arc.directions(); j++) {
      keepMost(moments.meanI(), moments.meanC(), weightI(arc, j), weightC(arc, j), most, from, to);
    }
  }

  /** And the least. */
  static void mostAndLeast(
      ChannelMoments moments, DelayArc arc, float[] most, float[] least, int from, int to) {
    most(moments, arc, most, from, to);
    Arrays.fill(least, from, to, Float.POSITIVE_INFINITY);
    for (int j = 0; j < arc.directions(); j++) {
      keepLeast(
          moments.meanI(), moments.meanC(), weightI(arc, j), weightC(arc, j), least, from, to);
    }
  }

  /** Whether any is as high as a limit: counted, for the largest would wait for the one before. */
  static boolean reach(float[] values, float limit, int n) {
    int many = 0;
    for (int i = 0; i < n; i++) {
      many += values[i] >= limit ? 1 : 0;
    }
    return many > 0;
  }

  /**
   * What no square of any direction at these pixels exceeds, of directions that are whitened by the
   * noise: the whitened mean's own, and far more than rounding adds.
   */
  static void bounds(ChannelMoments moments, PooledNoise noise, float[] into, int from, int to) {
    double l11 = Math.sqrt(noise.varianceI());
    double l21 = noise.covariance() / l11;
    double l22 = Math.sqrt(noise.varianceC() - l21 * l21);
    float perI = (float) (1 / l11);
    float perC = (float) (1 / l22);
    float shear = (float) (-l21 / (l11 * l22));
    whiten(
        moments.meanI(),
        moments.meanC(),
        perI,
        perC,
        shear,
        AMPLE * moments.cycles(),
        into,
        from,
        to);
  }

  private static void whiten(
      float[] meanI,
      float[] meanC,
      float perI,
      float perC,
      float shear,
      float factor,
      float[] into,
      int from,
      int to) {
    for (int i = from; i < to; i++) {
      float u = perI * meanI[i];
      float v = perC * meanC[i] + shear * meanI[i];
      into[i] = factor * (u * u + v * v);
    }
  }

  private static float weightI(DelayArc arc, int j) {
    return (float) arc.weightI()[j];
  }

  private static float weightC(DelayArc arc, int j) {
    return (float) arc.weightC()[j];
  }

  /** Turns each y into factor y |y|. */
  static void square(float[] values, float factor, int from, int to) {
    for (int i = from; i < to; i++) {
      values[i] = factor * values[i] * Math.abs(values[i]);
    }
  }

  private static void keepMost(
      float[] meanI, float[] meanC, float a, float b, float[] most, int from, int to) {
    for (int i = from; i < to; i++) {
      most[i] = Math.max(most[i], a * meanI[i] + b * meanC[i]);
    }
  }

  private static void keepLeast(
      float[] meanI, float[] meanC, float a, float b, float[] least, int from, int to) {
    for (int i = from; i < to; i++) {
      least[i] = Math.min(least[i], a * meanI[i] + b * meanC[i]);
    }
  }
}
