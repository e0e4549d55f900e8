package railglow.thermal;

/**
 * Sorts floats by their bits, eleven at a time from the least (Knuth, The Art of Computer
 * Programming 3, section 5.2.5): no comparison that a processor would have to guess. The order is
 * that of {@link java.util.Arrays#sort(float[])}, NaN last. Stateless.
 */
final class RadixSort {
  private static final int BITS = 11;
  private static final int DIGITS = 3;

  private RadixSort() {}

  static void sort(float[] values) {
    int[] keys = new int[values.length];
    int[][] starts = new int[DIGITS][1 << BITS];
    for (int i = 0; i < keys.length; i++) {
      keys[i] = inOrder(Float.floatToIntBits(values[i]));
      for (int d = 0; d < DIGITS; d++) {
        starts[d][digit(keys[i], d)]++;
      }
    }
    int[] sorted = new int[keys.length];
    for (int d = 0; d < DIGITS; d++) {
      int[] next = starts[d];
      for (int k = 0, from = 0; k < next.length; k++) {
        int count = next[k];
        next[k] = from;
        from += count;
      }
      for (int key : keys) {
        sorted[next[digit(key, d)]++] = key;
      }
      int[] other = keys;
      keys = sorted;
      sorted = other;
    }
    for (int i = 0; i < values.length; i++) {
      values[i] = Float.intBitsToFloat(bitsOf(keys[i]));
    }
  }

  private static int digit(int key, int d) {
    return key >>> d * BITS & (1 << BITS) - 1;
  }

  /** Unsigned in the order of the floats: negative ones turned round and put first. */
  private static int inOrder(int bits) {
    return bits ^ (bits >> 31 | Integer.MIN_VALUE);
  }

  private static int bitsOf(int key) {
    return key ^ (~key >> 31 | Integer.MIN_VALUE);
  }
}
