package railglow.pulse;

/**
 * One planned change of the output.
 *
 * @param index its place in the timeline, from 0
 * @param offsetNanos time after the start of the timeline
 */
public record PlannedEdge(int index, long offsetNanos, boolean on, double levelVolts) {}
