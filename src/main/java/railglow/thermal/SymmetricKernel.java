package railglow.thermal;

/**
 * Sums of a plane under a separable, symmetric kernel with zero weight outside the plane. Each row
 * is worked on in arrays of its own that all count from 0: only so does the JIT compiler of Java 17
 * know that a store can't change what the next step loads, and makes vector code (decision 0090).
 * Sums along rows are kept in a ring as long as the kernel is high, which stays in the cache. Adds
 * in the order of the taps, whatever the area: the same bits everywhere. Not thread-safe.
 */
public final class SymmetricKernel {
  private final int width;
  private final int height;
  private final int radius;
  private final Area whole;
  private final RowPairs pairs;
  private final float[][] ring;
  private final float[] outside;
  private final float[] sums;

  public SymmetricKernel(int width, int height, int radius) {
    this.width = width;
    this.height = height;
    this.radius = radius;
    whole = Area.whole(width, height);
    pairs = new RowPairs(width, radius);
    ring = new float[2 * radius + 1][RowPairs.room(width)];
    outside = new float[RowPairs.room(width)];
    sums = new float[RowPairs.room(width)];
  }

  /** What is done with a row of sums: columns left to right of the area, from index 0 on. */
  public interface RowOfSums {
    void done(int row, float[] sums);
  }

  /** As below, at every pixel of the plane. */
  public void sum(float[] input, float[] taps, RowOfSums then) {
    sum(input, taps, whole, then);
  }

  /**
   * Sums under the kernel at every pixel of an area, row by row from the top.
   *
   * @param taps weights of the centre and of its neighbours, as many as the radius
   */
  void sum(float[] input, float[] taps, Area area, RowOfSums then) {
    int ready = Math.max(0, area.top() - radius);
    for (int row = area.top(); row < area.bottom(); row++) {
      for (; ready < height && ready <= row + radius; ready++) {
        pairs.set(input, ready * width, area.left(), area.columns());
        pairs.sum(ring[ready % ring.length], taps, radius);
      }
      alongColumns(row, taps, area.columns());
      then.done(row, sums);
    }
  }

  /**
   * Takes the next row from the top, at every pixel of the plane; gives the rows of sums that are
   * complete with it. Sums to the bits of the others.
   *
   * @param next the pairs of that row, at least as far apart as the radius
   */
  void next(RowPairs next, int row, float[] taps, RowOfSums then) {
    next.sum(ring[row % ring.length], taps, radius);
    int last = row == height - 1 ? row : row - radius;
    for (int done = Math.max(0, row - radius); done <= last; done++) {
      alongColumns(done, taps, width);
      then.done(done, sums);
    }
  }

  private void alongColumns(int row, float[] taps, int n) {
    RowPairs.times(sums, ringRow(row), taps[0], n);
    int t = 1;
    for (; t < radius; t += 2) {
      addTwoPairs(
          sums,
          ringRow(row - t),
          ringRow(row + t),
          taps[t],
          ringRow(row - t - 1),
          ringRow(row + t + 1),
          taps[t + 1],
          n);
    }
    if (t == radius) {
      addPair(sums, ringRow(row - t), ringRow(row + t), taps[t], n);
    }
  }

  private float[] ringRow(int row) {
    return row < 0 || row >= height ? outside : ring[row % ring.length];
  }

  private static void addPair(float[] sum, float[] a, float[] b, float tap, int n) {
    for (int x = 0; x < n; x++) {
      sum[x] += tap * (a[x] + b[x]);
    }
  }

  private static void addTwoPairs(
      float[] sum, float[] a, float[] b, float tap, float[] c, float[] d, float nextTap, int n) {
    for (int x = 0; x < n; x++) {
      float first = sum[x] + tap * (a[x] + b[x]);
      sum[x] = first + nextTap * (c[x] + d[x]);
    }
  }
}
