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
    if (size == WINDOW) {
      int gone = Arrays.binarySearch(sorted, newest[next]);
      System.arraycopy(sorted, gone + 1, sorted, gone, --size - gone);
    }
    newest[next] = value;
    next = (next + 1) % WINDOW;
    int found = Arrays.binarySearch(sorted, 0, size, value);
    int at = found < 0 ? -found - 1 : found;
    System.arraycopy(sorted, at, sorted, at + 1, size++ - at);
    sorted[at] = value;
    median = sorted[size / 2];
  }

  /** NaN until there are enough values to tell. */
  double median() {
    return size < ENOUGH ? Double.NaN : median;
  }
}
