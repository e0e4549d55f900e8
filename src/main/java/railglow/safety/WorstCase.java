package railglow.safety;

import railglow.pulse.PlannedEdge;
import railglow.pulse.Timeline;

/**
 * The most a timeline can do to the board when everything works: the supply holds its voltage and
 * its current limit, and the board takes all it can get.
 *
 * @param volts highest level
 * @param amperes current limit
 * @param watts volts times amperes
 * @param onSeconds sum of all ON time to the cap of cycles
 * @param joules watts over all ON time
 */
public record WorstCase(
    double volts, double amperes, double watts, double onSeconds, double joules) {
  private static final double NANOS = 1e9;

  public static WorstCase of(Timeline timeline) {
    double amperes = timeline.sequence().maxAmperes();
    double highest = 0;
    double joules = 0;
    double onSeconds = 0;
    PlannedEdge held = null;
    for (PlannedEdge edge : timeline.edges()) {
      if (held != null) {
        double seconds = (edge.offsetNanos() - held.offsetNanos()) / NANOS;
        onSeconds += seconds;
        joules += seconds * held.levelVolts() * amperes;
      }
      held = edge.on() ? edge : null;
      highest = edge.on() ? Math.max(highest, edge.levelVolts()) : highest;
    }
    if (held != null) {
      double seconds = (timeline.endOffsetNanos() - held.offsetNanos()) / NANOS;
      onSeconds += seconds;
      joules += seconds * held.levelVolts() * amperes;
    }
    return new WorstCase(highest, amperes, highest * amperes, onSeconds, joules);
  }
}
