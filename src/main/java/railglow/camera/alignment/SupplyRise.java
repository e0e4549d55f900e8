package railglow.camera.alignment;

import java.util.ArrayList;
import java.util.List;
import railglow.observed.Edge;
import railglow.observed.SupplyReading;

/**
 * How long after its switch a supply really heats and stops heating: bounds on the mean of both,
 * from the readings beside the edges. A camera can't tell this delay from its own latency. For a
 * power that goes from one level to the other without turning back the delay is the integral of the
 * missing part; each reading's part holds at least since its start and at most until its end.
 *
 * @param leastSeconds known to have passed
 * @param mostSeconds not more than this; infinite when no reading tells
 */
public record SupplyRise(double leastSeconds, double mostSeconds) {
  /** Nothing is known of it. */
  public static final SupplyRise UNKNOWN = new SupplyRise(0, Double.POSITIVE_INFINITY);

  /** A reading this near to the level is one at the level: supplies measure to a few percent. */
  private static final double SETTLED_PART = 0.05;

  /**
   * From a run's record. The delay is taken as the same at each edge of a kind, so that the edge
   * that was read soonest bounds it best.
   *
   * @param edges in order of time, on and off in turn
   * @param readings in order of time
   */
  public static SupplyRise of(List<Edge> edges, List<SupplyReading> readings) {
    double fullWatts = medianWatts(edges, readings);
    if (!(fullWatts > 0)) {
      return UNKNOWN;
    }
    double[] least = new double[2];
    double[] most = {Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY};
    int at = 0;
    for (int k = 0; k < edges.size(); k++) {
      Edge edge = edges.get(k);
      long end = k + 1 < edges.size() ? edges.get(k + 1).commandedNanos() : Long.MAX_VALUE;
      while (at < readings.size() && readings.get(at).startNanos() < edge.commandedNanos()) {
        at++;
      }
      Bounds bounds = new Bounds(edge);
      while (at < readings.size() && readings.get(at).endNanos() <= end) {
        double part = readings.get(at).watts() / fullWatts;
        bounds.add(readings.get(at++), edge.on() ? part : 1 - part);
      }
      if (bounds.settled) {
        int kind = edge.on() ? 1 : 0;
        least[kind] = Math.max(least[kind], bounds.leastSeconds);
        most[kind] = Math.min(most[kind], bounds.mostSeconds);
      }
    }
    double upper = (most[0] + most[1]) / 2;
    return new SupplyRise(Math.min(upper, (least[0] + least[1]) / 2), upper);
  }

  private static double medianWatts(List<Edge> edges, List<SupplyReading> readings) {
    List<Double> watts = new ArrayList<>();
    int next = 0;
    boolean on = false;
    for (SupplyReading reading : readings) {
      while (next < edges.size() && edges.get(next).commandedNanos() <= reading.startNanos()) {
        on = edges.get(next++).on();
      }
      if (on) {
        watts.add(reading.watts());
      }
    }
    watts.sort(null);
    return watts.isEmpty() ? Double.NaN : watts.get(watts.size() / 2);
  }

  /** What the readings after one edge say. */
  private static final class Bounds {
    private double leastSeconds;
    private double mostSeconds;
    private boolean settled;
    private long leastUntil;
    private long mostUntil;
    private double missing = 1;

    Bounds(Edge edge) {
      leastUntil = edge.confirmedNanos();
      mostUntil = edge.commandedNanos();
    }

    void add(SupplyReading reading, double part) {
      if (settled) {
        return;
      }
      double missingNow = Math.max(0, Math.min(missing, 1 - part));
      mostSeconds += missing * (reading.endNanos() - mostUntil) * 1e-9;
      if (missingNow <= SETTLED_PART) {
        settled = true;
        return;
      }
      leastSeconds += missingNow * Math.max(0, reading.startNanos() - leastUntil) * 1e-9;
      leastUntil = Math.max(leastUntil, reading.startNanos());
      mostUntil = reading.endNanos();
      missing = missingNow;
    }
  }
}
