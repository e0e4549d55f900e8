package railglow.pulse;

import java.util.ArrayList;
import java.util.List;

/**
 * The changes of the output that make a row of cycles; OFF before, after and between them. Pure.
 */
public final class PulseEdges {
  private PulseEdges() {}

  /**
   * @param cycles in order, not overlapping; those that touch are one row
   * @return in order, numbered from 0
   */
  public static List<PlannedEdge> of(List<CycleWindow> cycles, double levelVolts) {
    List<PlannedEdge> edges = new ArrayList<>();
    boolean on = false;
    for (int i = 0; i < cycles.size(); i++) {
      CycleWindow cycle = cycles.get(i);
      boolean first = cycle.inverted();
      if (first != on) {
        edges.add(edge(edges.size(), cycle.startNanos(), first, levelVolts));
      }
      edges.add(edge(edges.size(), cycle.onNanos(), !first, levelVolts));
      edges.add(edge(edges.size(), cycle.offNanos(), first, levelVolts));
      on = first;
      boolean last = i + 1 == cycles.size() || cycles.get(i + 1).startNanos() != cycle.endNanos();
      if (last && on) {
        edges.add(edge(edges.size(), cycle.endNanos(), false, levelVolts));
        on = false;
      }
    }
    return edges;
  }

  private static PlannedEdge edge(int index, long nanos, boolean on, double levelVolts) {
    return new PlannedEdge(index, nanos, on, on ? levelVolts : 0);
  }
}
