package railglow.board.examples;

import java.awt.geom.Path2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Straight runs of copper between the pads of each net: a picture's decoration, no routing. */
final class Traces {
  private static final double LONGEST = 34;

  /** One run and how wide it is, mm. */
  record Trace(Path2D path, double width) {}

  private Traces() {}

  static List<Trace> of(ExampleBoard board) {
    Map<String, List<double[]>> pads = new TreeMap<>();
    for (ExamplePart part : board.parts()) {
      List<PadPlan.PadPlace> places = PadPlan.of(part);
      for (int i = 0; i < Math.min(places.size(), part.nets().size()); i++) {
        String net = part.nets().get(i);
        if (!net.isEmpty() && !net.startsWith("GND")) {
          pads.computeIfAbsent(net, name -> new ArrayList<>())
              .add(new double[] {places.get(i).x(), places.get(i).y()});
        }
      }
    }
    List<Trace> traces = new ArrayList<>();
    pads.forEach((net, places) -> connect(places, width(net), traces));
    return traces;
  }

  private static double width(String net) {
    return net.matches("(24V|12V|SW|COM|NO$|V\\d$).*") ? 1.3 : net.matches("\\dV.*") ? 0.7 : 0.28;
  }

  /** Each pad to its nearest one already connected (Prim's tree). */
  private static void connect(List<double[]> pads, double width, List<Trace> traces) {
    List<double[]> done = new ArrayList<>(List.of(pads.get(0)));
    List<double[]> open = new ArrayList<>(pads.subList(1, pads.size()));
    while (!open.isEmpty()) {
      double nearest = Double.POSITIVE_INFINITY;
      double[] from = null;
      double[] to = null;
      for (double[] a : done) {
        for (double[] b : open) {
          double distance = Math.hypot(a[0] - b[0], a[1] - b[1]);
          if (distance < nearest) {
            nearest = distance;
            from = a;
            to = b;
          }
        }
      }
      open.remove(to);
      done.add(to);
      if (nearest < LONGEST) {
        traces.add(new Trace(run(from, to), width));
      }
    }
  }

  /** Straight, then at 45 degrees. */
  private static Path2D run(double[] from, double[] to) {
    double dx = to[0] - from[0];
    double dy = to[1] - from[1];
    double diagonal = Math.min(Math.abs(dx), Math.abs(dy));
    Path2D path = new Path2D.Double();
    path.moveTo(from[0], from[1]);
    path.lineTo(to[0] - Math.signum(dx) * diagonal, to[1] - Math.signum(dy) * diagonal);
    path.lineTo(to[0], to[1]);
    return path;
  }
}
