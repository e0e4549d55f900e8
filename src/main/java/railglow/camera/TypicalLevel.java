package railglow.camera;

import java.util.Arrays;

/**
 * The median of the newest 64 values: what is usual, untouched by events. Allocates nothing per
 * value. Not thread-safe.
 */
final class TypicalLevel {
  private static final int WINDOW = 64;
  private static final int ENOUGH = 8;
  private final double[] newest = new double[WINDOW];
  private final double[] sorted = new double[WINDOW];
  private int size;
  private int next;
  private double median = Double.NaN;

  void add(double value) {
    newest[next] = value;
    next = (next + 1) % WINDOW;
    size = Math.min(WINDOW, size + 1);
    System.arraycopy(newest, 0, sorted, 0, size);
    Arrays.sort(sorted, 0, size);
    median = sorted[size / 2];
  }

  /** NaN until there are enough values to tell. */
  double median() {
    return size < ENOUGH ? Double.NaN : median;
  }
}
