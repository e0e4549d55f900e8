package railglow.camera.alignment;

import java.util.List;

/**
 * What a pulsed resistor looks like through a late and slow camera: a sum of first-order bodies of
 * fixed time constants (a resistor on a board is none of them alone), each seen through the
 * camera's first-order lag after its latency, on a slow drift. All but latency and lag enter
 * linearly and are solved for on the way (variable projection: Golub and Pereyra, SIAM J. Numer.
 * Anal. 10, 1973). Not thread-safe.
 */
final class WarmingModel {
  /** The bodies: from a bare chip resistor to the board under it. All slower than any detector. */
  private static final double[] BODIES = {0.12, 0.24, 0.48, 0.96, 1.92, 3.84, 10};

  private static final double LAST_SECONDS = 0.2;
  private static final int DRIFT_TERMS = 3;
  private final List<EdgeTime> edges;
  private final double[] times;
  private final double[] values;
  private final boolean[] used;
  private final double[][] columns;

  WarmingModel(List<EdgeTime> edges, double[] times, double[] values, boolean[] used) {
    this.edges = edges;
    this.times = times;
    this.values = values;
    this.used = used;
    this.columns = new double[BODIES.length + DRIFT_TERMS][times.length];
    double middle = (times[0] + times[times.length - 1]) / 2;
    double half = Math.max(1e-9, (times[times.length - 1] - times[0]) / 2);
    for (int i = 0; i < times.length; i++) {
      double t = (times[i] - middle) / half;
      columns[BODIES.length][i] = 1;
      columns[BODIES.length + 1][i] = t;
      columns[BODIES.length + 2][i] = t * t;
    }
  }

  /** What is left of the values after the best fit; 0 at frames that take no part. */
  double[] residuals(double latency, double timeConstant) {
    fillBodies(latency, timeConstant);
    double[] weights = solve();
    double[] left = new double[times.length];
    for (int i = 0; i < times.length; i++) {
      if (used[i]) {
        left[i] = values[i];
        for (int k = 0; k < columns.length; k++) {
          left[i] -= weights[k] * columns[k][i];
        }
      }
    }
    return left;
  }

  /** How much warmer it is just before the output goes off than just before it goes on. */
  double rise(double latency) {
    double[] sums = new double[2];
    int[] counts = new int[2];
    int next = 0;
    for (int i = 0; i < times.length; i++) {
      double now = times[i] - latency;
      while (next < edges.size() && edges.get(next).seconds() <= now) {
        next++;
      }
      if (used[i] && next < edges.size() && edges.get(next).seconds() - now < LAST_SECONDS) {
        int which = edges.get(next).on() ? 0 : 1;
        sums[which] += values[i];
        counts[which]++;
      }
    }
    return sums[1] / Math.max(1, counts[1]) - sums[0] / Math.max(1, counts[0]);
  }

  int unknowns() {
    return columns.length;
  }

  /**
   * The response of body and lag in a row to the steps so far, kept up from frame to frame by the
   * decay of its exponentials: 1 - (tau e^(-t/tau) - lag e^(-t/lag)) / (tau - lag) for each step.
   */
  private void fillBodies(double latency, double lag) {
    for (int k = 0; k < BODIES.length; k++) {
      double tau = BODIES[k];
      double slow = 0;
      double fast = 0;
      double level = 0;
      int next = 0;
      double last = Double.NaN;
      for (int i = 0; i < times.length; i++) {
        double now = times[i] - latency;
        double passed = i == 0 ? 0 : now - last;
        slow *= Math.exp(-passed / tau);
        fast *= lag > 0 ? Math.exp(-passed / lag) : 0;
        while (next < edges.size() && edges.get(next).seconds() <= now) {
          double since = now - edges.get(next).seconds();
          int sign = edges.get(next).on() ? 1 : -1;
          level += sign;
          slow += sign * Math.exp(-since / tau);
          fast += lag > 0 ? sign * Math.exp(-since / lag) : 0;
          next++;
        }
        columns[k][i] = level - (tau * slow - lag * fast) / (tau - lag);
        last = now;
      }
    }
  }

  private double[] solve() {
    int n = columns.length;
    double[][] normal = new double[n][n];
    double[] right = new double[n];
    for (int a = 0; a < n; a++) {
      for (int b = 0; b <= a; b++) {
        normal[a][b] = product(columns[a], columns[b]);
        normal[b][a] = normal[a][b];
      }
      right[a] = product(columns[a], values);
    }
    return LeastSquares.solve(normal, right);
  }

  private double product(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      if (used[i]) {
        sum += a[i] * b[i];
      }
    }
    return sum;
  }
}
