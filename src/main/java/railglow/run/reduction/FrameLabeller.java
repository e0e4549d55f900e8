package railglow.run.reduction;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import railglow.observed.Edge;
import railglow.pulse.CycleWindow;
import railglow.pulse.PlannedEdge;
import railglow.pulse.PulseEdges;

/**
 * Says for a mid-exposure time in which cycle and quarter it lies and whether it is too near to an
 * edge to be used. Pure bookkeeping of planned windows and edges made; not thread-safe.
 */
final class FrameLabeller {
  private static final long NOT_MADE = Long.MIN_VALUE;
  private final CycleWindow[] cycles;

  /** Per cycle the edges within it and at its borders. */
  private final List<List<PlannedEdge>> edges = new ArrayList<>();

  private final long guardNanos;
  private final long settleNanos;
  private final long[] commandedNanos;
  private final long[] confirmedNanos;
  private int nearest;

  /**
   * @param cycles in order, not overlapping
   * @param guardNanos half a frame and the uncertainty of the frame times: kept free on both sides
   *     of an edge
   * @param settleNanos the camera's own time constant, kept free after an edge
   */
  FrameLabeller(List<CycleWindow> cycles, long guardNanos, long settleNanos) {
    this.cycles = cycles.toArray(CycleWindow[]::new);
    this.guardNanos = guardNanos;
    this.settleNanos = settleNanos;
    int count = share(PulseEdges.of(cycles, 1));
    this.commandedNanos = new long[count];
    this.confirmedNanos = new long[count];
    Arrays.fill(commandedNanos, NOT_MADE);
  }

  private int share(List<PlannedEdge> planned) {
    for (int k = 0; k < cycles.length; k++) {
      edges.add(new ArrayList<>());
    }
    int at = 0;
    for (PlannedEdge edge : planned) {
      while (edge.offsetNanos() > cycles[at].endNanos()) {
        at++;
      }
      edges.get(at).add(edge);
      boolean shared = at + 1 < cycles.length && edge.offsetNanos() >= cycles[at + 1].startNanos();
      if (shared) {
        edges.get(at + 1).add(edge);
      }
    }
    return planned.size();
  }

  /** Remembers a change of the output; those outside the timeline are nobody's. */
  void edgeMade(Edge edge) {
    if (edge.index() >= 0 && edge.index() < commandedNanos.length) {
      commandedNanos[edge.index()] = edge.commandedNanos();
      confirmedNanos[edge.index()] = edge.confirmedNanos();
    }
  }

  /** How much later than a time the labeller must know all edges to judge that time. */
  long lookAheadNanos() {
    return guardNanos;
  }

  /** The index in the list of the cycle a time lies in; -1 between or outside cycles. */
  int cycleAt(long midNanos) {
    while (nearest + 1 < cycles.length && midNanos >= cycles[nearest].endNanos()) {
      nearest++;
    }
    while (nearest > 0 && midNanos < cycles[nearest].startNanos()) {
      nearest--;
    }
    return cycles.length > 0 && cycles[nearest].quarterAt(midNanos) > 0 ? nearest : -1;
  }

  CycleWindow window(int index) {
    return cycles[index];
  }

  int count() {
    return cycles.length;
  }

  /** Whether a time lies too near to an edge within its cycle or at its borders. */
  boolean inTransition(int index, long midNanos) {
    List<PlannedEdge> own = edges.get(index);
    // asked for every frame: by index, for an iterator would be garbage
    for (int k = 0; k < own.size(); k++) {
      PlannedEdge edge = own.get(k);
      if (near(edge.index(), edge.offsetNanos(), midNanos)) {
        return true;
      }
    }
    return false;
  }

  /**
   * What is wrong with the edges of a cycle.
   *
   * @param latestNanos how late an edge may be
   * @return empty when both were made in time
   */
  String edgeFault(int index, long latestNanos) {
    for (PlannedEdge one : edges.get(index)) {
      int edge = one.index();
      long planned = one.offsetNanos();
      String name = one.on() ? "on" : "off";
      if (commandedNanos[edge] == NOT_MADE) {
        return "the " + name + " edge was not made";
      }
      long late = confirmedNanos[edge] - planned;
      if (late > latestNanos || commandedNanos[edge] < planned - latestNanos) {
        return "the " + name + " edge was " + late / 1_000_000 + " ms off its time";
      }
    }
    return "";
  }

  /**
   * When the output really changed within a cycle or at its start: between the command and its
   * confirmation, as far as anybody knows in the middle. Of a cycle without an edge fault.
   */
  EdgesMade edgesMade(int index) {
    PlannedEdge[] own =
        edges.get(index).stream()
            .filter(edge -> edge.offsetNanos() < cycles[index].endNanos())
            .toArray(PlannedEdge[]::new);
    long[] nanos = new long[own.length];
    for (int k = 0; k < own.length; k++) {
      long commanded = commandedNanos[own[k].index()];
      nanos[k] = commanded + (confirmedNanos[own[k].index()] - commanded) / 2;
    }
    return new EdgesMade(!own[0].on(), nanos);
  }

  /**
   * Changes of the output in one cycle.
   *
   * @param onBefore whether it was on before the first
   * @param nanos in order
   */
  record EdgesMade(boolean onBefore, long[] nanos) {}

  private boolean near(int edge, long plannedNanos, long midNanos) {
    long from = plannedNanos;
    long until = plannedNanos;
    if (commandedNanos[edge] != NOT_MADE) {
      from = Math.min(from, commandedNanos[edge]);
      until = Math.max(until, confirmedNanos[edge]);
    }
    return midNanos >= from - guardNanos && midNanos <= until + guardNanos + settleNanos;
  }
}
