package railglow.camera.alignment;

import railglow.observed.Edge;

/**
 * A change of the heating, on the frames' own time scale.
 *
 * @param seconds the middle between command and confirmation
 * @param widthSeconds from command to confirmation: it was somewhere in between
 */
public record EdgeTime(double seconds, double widthSeconds, boolean on) {
  /** Relative to a monotonic time. */
  public static EdgeTime of(Edge edge, long zeroNanos) {
    double commanded = (edge.commandedNanos() - zeroNanos) * 1e-9;
    double confirmed = (edge.confirmedNanos() - zeroNanos) * 1e-9;
    return new EdgeTime((commanded + confirmed) / 2, confirmed - commanded, edge.on());
  }
}
