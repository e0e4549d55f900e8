package railglow.pulse;

import java.util.ArrayList;
import java.util.List;

/**
 * A sequence expanded to edges and cycle windows, as offsets from the start of the run. Every time
 * is start + k x period, never a sum of waits. Immutable.
 */
public final class Timeline {
  private static final double NANOS = 1e9;
  private final PulseSequence sequence;
  private final List<PlannedEdge> edges;
  private final List<CycleWindow> cycles;
  private final long endOffsetNanos;

  private Timeline(
      PulseSequence sequence,
      List<PlannedEdge> edges,
      List<CycleWindow> cycles,
      long endOffsetNanos) {
    this.sequence = sequence;
    this.edges = List.copyOf(edges);
    this.cycles = List.copyOf(cycles);
    this.endOffsetNanos = endOffsetNanos;
  }

  /** Expands up to the cap of cycles. */
  public static Timeline of(PulseSequence sequence) {
    List<CycleWindow> cycles = new ArrayList<>();
    double period = sequence.periodSeconds();
    boolean coded = sequence.order() == PulseOrder.CODED;
    for (int k = 0; k < sequence.maxCycles(); k++) {
      double start = sequence.leadInSeconds() + k * period;
      cycles.add(
          new CycleWindow(
              k,
              nanos(start),
              nanos(start + period / 4),
              nanos(start + period / 2),
              nanos(start + 3 * period / 4),
              nanos(sequence.leadInSeconds() + (k + 1) * period),
              coded && PulseCode.inverted(k)));
    }
    double end = sequence.leadInSeconds() + sequence.maxCycles() * period + sequence.restSeconds();
    return new Timeline(sequence, PulseEdges.of(cycles, sequence.levelVolts()), cycles, nanos(end));
  }

  /**
   * One level held steadily between lead-in and rest, without cycles.
   *
   * @param onSeconds how long at most
   */
  public static Timeline steady(PulseSequence sequence, double onSeconds) {
    long on = nanos(sequence.leadInSeconds());
    long off = nanos(sequence.leadInSeconds() + onSeconds);
    return new Timeline(
        sequence,
        List.of(
            new PlannedEdge(0, on, true, sequence.levelVolts()), new PlannedEdge(1, off, false, 0)),
        List.of(),
        nanos(sequence.leadInSeconds() + onSeconds + sequence.restSeconds()));
  }

  public PulseSequence sequence() {
    return sequence;
  }

  public List<PlannedEdge> edges() {
    return edges;
  }

  public List<CycleWindow> cycles() {
    return cycles;
  }

  public long endOffsetNanos() {
    return endOffsetNanos;
  }

  private static long nanos(double seconds) {
    return Math.round(seconds * NANOS);
  }
}
