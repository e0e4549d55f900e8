package railglow.camera;

import java.util.Arrays;

/**
 * The line through the newest (frame number, arrival) points that late arrivals can't bend: of all
 * lines below every point, the one with the least sum of distances. It is the edge of the lower
 * convex hull under the points' mean number (the linear programme that is common for the skew of
 * network clocks: Moon, Skelly, Towsley, INFOCOM 1999). Until there are enough points, and whenever
 * that edge is implausible, the slope is the period expected beforehand. Allocates nothing per
 * point. Not thread-safe.
 */
final class ArrivalLine {
  static final int WINDOW = 256;
  static final int ENOUGH = 16;
  private static final double PLAUSIBLE = 0.25;
  private final double[] x = new double[WINDOW];
  private final double[] y = new double[WINDOW];
  private final int[] hull = new int[WINDOW];
  private final double[] scratch = new double[WINDOW];
  private int oldest;
  private int size;
  private long added;
  private double expectedPeriod;
  private double intercept;
  private double slope;

  /**
   * @param nominalPeriod seconds from frame to frame
   */
  ArrivalLine(double nominalPeriod) {
    expectedPeriod = nominalPeriod;
    slope = nominalPeriod;
  }

  int size() {
    return size;
  }

  /** Seconds from frame to frame. */
  double slope() {
    return slope;
  }

  /** The arrival without any delay, seconds, on the points' own scale. */
  double at(double number) {
    return intercept + slope * number;
  }

  /** Forgets the points but not the period. */
  void restart() {
    restart(slope);
  }

  /** Forgets the points and expects this period. */
  void restart(double period) {
    expectedPeriod = period;
    slope = period;
    size = 0;
    oldest = 0;
    added = 0;
  }

  /** Adds a point whose number is above all before and fits again. */
  void add(double number, double seconds) {
    if (size == WINDOW) {
      oldest = (oldest + 1) % WINDOW;
      size--;
    }
    int at = (oldest + size) % WINDOW;
    x[at] = number;
    y[at] = seconds;
    size++;
    added++;
    if (size >= ENOUGH && (Long.bitCount(added) == 1 || added % 64 == 0)) {
      learnPeriod();
    }
    fit();
  }

  /** How late the window's arrivals are: a quantile of the distances above the line, seconds. */
  double lateness(double quantile) {
    if (size == 0) {
      return Double.NaN;
    }
    for (int i = 0; i < size; i++) {
      scratch[i] = yOf(i) - at(xOf(i));
    }
    Arrays.sort(scratch, 0, size);
    return scratch[(int) Math.min(size - 1L, (long) (quantile * size))];
  }

  /** A mean step that neither single gaps nor bursts can move, if it is near the nominal one. */
  private void learnPeriod() {
    int steps = size - 1;
    for (int i = 0; i < steps; i++) {
      scratch[i] = (yOf(i + 1) - yOf(i)) / (xOf(i + 1) - xOf(i));
    }
    Arrays.sort(scratch, 0, steps);
    double median = scratch[steps / 2];
    double sum = 0;
    int count = 0;
    for (int i = 0; i < steps; i++) {
      if (scratch[i] > 0.5 * median && scratch[i] < 1.5 * median) {
        sum += scratch[i];
        count++;
      }
    }
    double mean = count == 0 ? 0 : sum / count;
    if (mean > expectedPeriod / 2 && mean < expectedPeriod * 2) {
      expectedPeriod = mean;
    }
  }

  private void fit() {
    slope = expectedPeriod;
    if (size >= ENOUGH) {
      double edge = edgeUnderTheMean();
      if (Math.abs(edge / expectedPeriod - 1) <= PLAUSIBLE) {
        slope = edge;
      }
    }
    intercept = Double.POSITIVE_INFINITY;
    for (int i = 0; i < size; i++) {
      intercept = Math.min(intercept, yOf(i) - slope * xOf(i));
    }
  }

  private double edgeUnderTheMean() {
    int top = 0;
    double sum = 0;
    for (int i = 0; i < size; i++) {
      sum += xOf(i);
      while (top >= 2 && !turnsUp(hull[top - 2], hull[top - 1], i)) {
        top--;
      }
      hull[top++] = i;
    }
    double mean = sum / size;
    int right = 1;
    while (right < top - 1 && xOf(hull[right]) < mean) {
      right++;
    }
    int a = hull[right - 1];
    int b = hull[right];
    return (yOf(b) - yOf(a)) / (xOf(b) - xOf(a));
  }

  private boolean turnsUp(int a, int b, int c) {
    return (yOf(b) - yOf(a)) * (xOf(c) - xOf(b)) < (yOf(c) - yOf(b)) * (xOf(b) - xOf(a));
  }

  private double xOf(int i) {
    return x[(oldest + i) % WINDOW];
  }

  private double yOf(int i) {
    return y[(oldest + i) % WINDOW];
  }
}
