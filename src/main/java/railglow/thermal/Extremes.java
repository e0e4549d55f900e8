package railglow.thermal;

import java.util.Arrays;

/**
 * The largest and the least mean over the directions of an arc, and its signed square, where all
 * pixels scatter alike: a square that grows with the mean need be made only once. Short loops over
 * one index, for the JIT compiler to make vectors of (decision 0090). Stateless.
 */
final class Extremes {
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
