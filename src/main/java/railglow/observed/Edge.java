package railglow.observed;

/**
 * A change of the output that was made.
 *
 * @param index its place in the timeline, from 0; -1 for a change outside it (start, stop)
 * @param on whether the output went on
 * @param levelVolts the level it went to; 0 when off
 * @param commandedNanos monotonic time just before the command was sent
 * @param confirmedNanos monotonic time when it had been read back
 */
public record Edge(
    int index, boolean on, double levelVolts, long commandedNanos, long confirmedNanos) {
  public Edge {
    if (confirmedNanos < commandedNanos) {
      throw new IllegalArgumentException("an edge can't be confirmed before it was commanded");
    }
  }
}
