package railglow.thermal;

/**
 * One row of a plane, and at each of its pixels the sums of the two pixels as far to the left as to
 * the right, 0 outside: what every symmetric kernel along the row is made of, of any width. Arrays
 * all count from 0, see {@link SymmetricKernel}. Not thread-safe.
 */
final class RowPairs {
  private final int width;
  private final int radius;
  private final float[] padded;
  private final float[] shifted;
  private final float[][] pairs;
  private int columns;

  /**
   * @param radius the distance of the farthest pair
   */
  RowPairs(int width, int radius) {
    this.width = width;
    this.radius = radius;
    padded = new float[width + 2 * radius];
    shifted = new float[room(width)];
    pairs = new float[radius + 1][room(width)];
  }

  /**
   * The length of an array that fills whole lines of the cache with its header: arrays made one
   * after the other then stand alike in them, and vectors that are stored in one piece are loaded
   * in one piece.
   */
  static int room(int columns) {
    return (columns + 15) / 16 * 16 + 12;
  }

  /** Takes so many columns of the row that begins at an index of the plane. */
  void set(float[] plane, int start, int left, int n) {
    System.arraycopy(plane, start, padded, radius, width);
    columns = n;
    int from = radius + left;
    System.arraycopy(padded, from, pairs[0], 0, n);
    for (int t = 1; t <= radius; t++) {
      System.arraycopy(padded, from - t, pairs[t], 0, n);
      System.arraycopy(padded, from + t, shifted, 0, n);
      add(pairs[t], shifted, n);
    }
  }

  /** Sums under a kernel, in the order of the taps: that of the centre first. */
  void sum(float[] sum, float[] taps, int reach) {
    times(sum, pairs[0], taps[0], columns);
    int t = 1;
    for (; t + 2 < reach; t += 4) {
      addFour(sum, taps, t);
    }
    for (; t <= reach; t++) {
      addOne(sum, pairs[t], taps[t], columns);
    }
  }

  private void addFour(float[] sum, float[] taps, int t) {
    addFour(
        sum,
        pairs[t],
        taps[t],
        pairs[t + 1],
        taps[t + 1],
        pairs[t + 2],
        taps[t + 2],
        pairs[t + 3],
        taps[t + 3],
        columns);
  }

  static void times(float[] sum, float[] values, float tap, int n) {
    for (int x = 0; x < n; x++) {
      sum[x] = tap * values[x];
    }
  }

  private static void add(float[] sum, float[] values, int n) {
    for (int x = 0; x < n; x++) {
      sum[x] += values[x];
    }
  }

  private static void addOne(float[] sum, float[] a, float tapA, int n) {
    for (int x = 0; x < n; x++) {
      sum[x] += tapA * a[x];
    }
  }

  private static void addFour(
      float[] sum,
      float[] a,
      float tapA,
      float[] b,
      float tapB,
      float[] c,
      float tapC,
      float[] d,
      float tapD,
      int n) {
    for (int x = 0; x < n; x++) {
      sum[x] = sum[x] + tapA * a[x] + tapB * b[x] + tapC * c[x] + tapD * d[x];
    }
  }
}
