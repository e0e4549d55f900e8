package railglow.sim.picture;

import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * Fast, repeatable normal deviates. A SplitMix64 sequence (Steele, Lea, Flood, Fast splittable
 * pseudorandom number generators, OOPSLA 2014) gives four indices at a time into a table of normal
 * quantiles; two entries are added for each deviate, which carries the tails to 5.6 sigma.
 *
 * <p>Not thread-safe.
 */
public final class GaussianNoise {
  private static final int BITS = 13;
  private static final int MASK = (1 << BITS) - 1;
  private static final float[] TABLE = table();

  private long state;

  public GaussianNoise(long seed) {
    state = mix(seed + 0x9E3779B97F4A7C15L);
  }

  /** A stream of its own for each pair of numbers. */
  public static GaussianNoise of(long seed, long stream) {
    return new GaussianNoise(mix(seed) ^ mix(stream * 0xD1B54A32D192ED03L + 1));
  }

  /** The next 64 random bits. */
  public long nextBits() {
    state += 0x9E3779B97F4A7C15L;
    return mix(state);
  }

  /** Uniform in [0, 1). */
  public double nextUniform() {
    return (nextBits() >>> 11) * 0x1.0p-53;
  }

  /** Mean 0, variance 1. */
  public double next() {
    long bits = nextBits();
    return TABLE[(int) bits & MASK] + TABLE[(int) (bits >>> 16) & MASK];
  }

  /** Adds noise of one standard deviation to every value. */
  public void addTo(float[] values, float sigma) {
    int pairs = values.length & ~1;
    long s = state;
    for (int i = 0; i < pairs; i += 2) {
      s += 0x9E3779B97F4A7C15L;
      long bits = mix(s);
      values[i] += sigma * (TABLE[(int) bits & MASK] + TABLE[(int) (bits >>> 16) & MASK]);
      values[i + 1] +=
          sigma * (TABLE[(int) (bits >>> 32) & MASK] + TABLE[(int) (bits >>> 48) & MASK]);
    }
    state = s;
    if (pairs < values.length) {
      values[pairs] += sigma * (float) next();
    }
  }

  private static long mix(long z) {
    long a = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
    long b = (a ^ (a >>> 27)) * 0x94D049BB133111EBL;
    return b ^ (b >>> 31);
  }

  private static float[] table() {
    NormalDistribution normal = NormalDistribution.of(0, 1);
    double[] quantiles = new double[1 << BITS];
    double squares = 0;
    for (int i = 0; i < quantiles.length; i++) {
      quantiles[i] = normal.inverseCumulativeProbability((i + 0.5) / quantiles.length);
      squares += quantiles[i] * quantiles[i];
    }
    double scale = Math.sqrt(0.5 * quantiles.length / squares);
    float[] table = new float[quantiles.length];
    for (int i = 0; i < table.length; i++) {
      table[i] = (float) (scale * quantiles[i]);
    }
    return table;
  }
}
