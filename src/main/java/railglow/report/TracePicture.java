package railglow.report;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import railglow.report.draw.Pen;
import railglow.report.draw.Shape;
import railglow.report.draw.Sketch;
import railglow.report.draw.Ticks;

/** Volts, amperes, watts and the hottest pixel against time, ON halves shaded. Pure. */
final class TracePicture {
  private static final double WIDTH = 1134;
  private static final double LEFT = 70;
  private static final double RIGHT = 16;
  private static final double PANEL = 118;
  private static final double GAP = 30;
  private static final double BOTTOM = 44;
  private static final int SHADE = 0xF3DDB8;

  private TracePicture() {}

  private record Panel(String title, int rgb, ToDoubleFunction<Trace.Row> value) {}

  /**
   * Draws a trace.
   *
   * @param texts names the panels
   */
  static Sketch of(Trace trace, Texts texts) {
    List<Panel> panels = new ArrayList<>();
    panels.add(new Panel(texts.get("trace.volts"), 0x1F4E79, Trace.Row::volts));
    panels.add(new Panel(texts.get("trace.amperes"), 0x1F4E79, Trace.Row::amperes));
    panels.add(new Panel(texts.get("trace.watts"), 0x1F4E79, Trace.Row::watts));
    panels.add(new Panel(texts.get("trace.rise"), 0x8A3B12, Trace.Row::riseKelvin));
    if (trace.rows().stream().anyMatch(row -> Double.isFinite(row.celsius()))) {
      panels.add(new Panel(texts.get("trace.celsius"), 0x8A3B12, Trace.Row::celsius));
    }
    panels.removeIf(
        panel ->
            trace.rows().stream()
                .noneMatch(row -> Double.isFinite(panel.value.applyAsDouble(row))));
    double height = Math.max(1, panels.size()) * (PANEL + GAP) + BOTTOM;
    Sketch sketch = new Sketch(WIDTH, height);
    double end = trace.endSeconds() > 0 ? trace.endSeconds() : 1;
    double bottom = panels.size() * (PANEL + GAP);
    for (int i = 0; i < panels.size(); i++) {
      draw(sketch, trace, panels.get(i), GAP + i * (PANEL + GAP), end);
    }
    double step = Ticks.step(0, end, 12);
    for (double tick : Ticks.between(0, end, 12)) {
      sketch.text(x(tick, end), bottom + 20, Ticks.text(tick, step), 14, Shape.Anchor.MIDDLE);
    }
    sketch.text(
        (LEFT + WIDTH - RIGHT) / 2, bottom + 40, texts.get("trace.time"), 14, Shape.Anchor.MIDDLE);
    return sketch;
  }

  private static double x(double seconds, double end) {
    return LEFT + (WIDTH - LEFT - RIGHT) * seconds / end;
  }

  private static void draw(Sketch sketch, Trace trace, Panel panel, double top, double end) {
    for (Trace.Span span : trace.onSpans()) {
      double from = x(span.from(), end);
      sketch.rectangle(from, top, x(span.to(), end) - from, PANEL, Pen.fill(SHADE, 1));
    }
    double high = Double.NEGATIVE_INFINITY;
    double lowest = Double.POSITIVE_INFINITY;
    for (Trace.Row row : trace.rows()) {
      double value = panel.value.applyAsDouble(row);
      if (Double.isFinite(value) && Math.abs(value) < 9.9e37) {
        high = Math.max(high, value);
        lowest = Math.min(lowest, value);
      }
    }
    double low = lowest > 0 && high - lowest < 0.5 * lowest ? lowest : Math.min(0, lowest);
    if (lowest < 0 && -lowest < 0.02 * high) {
      low = 0; // the zero of a meter is never quite zero
    }
    if (!(high > low)) {
      high = low + 1;
    }
    double step = Ticks.step(low, high, 4);
    low = Math.floor(low / step + 1e-9) * step;
    high = Math.ceil(high / step - 1e-9) * step;
    for (double tick : Ticks.between(low, high, 5)) {
      double y = y(tick, low, high, top);
      sketch.line(LEFT, y, WIDTH - RIGHT, y, Pen.line(Sketch.GRID, 1));
      sketch.text(LEFT - 8, y + 5, Ticks.text(tick, step), 14, Shape.Anchor.END);
    }
    sketch.add(
        new Shape.Text(
            LEFT, top - 8, panel.title, 14, true, Shape.Anchor.START, Sketch.INK, Pen.NO_FILL));
    line(sketch, trace, panel, top, new double[] {low, high, end});
    sketch.rectangle(LEFT, top, WIDTH - LEFT - RIGHT, PANEL, Pen.line(Sketch.FAINT, 1));
  }

  /** At most the lowest and highest value of each column of the drawing; gaps stay gaps. */
  private static void line(
      Sketch sketch, Trace trace, Panel panel, double top, double[] lowHighEnd) {
    List<double[]> points = new ArrayList<>();
    long column = Long.MIN_VALUE;
    double[] lowest = null;
    double[] highest = null;
    for (Trace.Row row : trace.rows()) {
      double value = panel.value.applyAsDouble(row);
      if (!Double.isFinite(value) || Math.abs(value) >= 9.9e37) {
        continue;
      }
      double[] point = {
        x(row.seconds(), lowHighEnd[2]), y(value, lowHighEnd[0], lowHighEnd[1], top)
      };
      long here = (long) Math.floor(point[0]);
      if (here != column) {
        flush(points, lowest, highest);
        column = here;
        lowest = point;
        highest = point;
      } else if (point[1] < highest[1]) {
        highest = point;
      } else if (point[1] > lowest[1]) {
        lowest = point;
      }
    }
    flush(points, lowest, highest);
    sketch.add(
        new Shape.Path(
            points.stream().mapToDouble(p -> p[0]).toArray(),
            points.stream().mapToDouble(p -> p[1]).toArray(),
            false,
            Pen.line(panel.rgb, 1.6)));
  }

  private static void flush(List<double[]> points, double[] lowest, double[] highest) {
    if (lowest == null) {
      return;
    }
    boolean lowFirst = lowest[0] <= highest[0];
    points.add(lowFirst ? lowest : highest);
    if (lowest != highest) {
      points.add(lowFirst ? highest : lowest);
    }
  }

  private static double y(double value, double low, double high, double top) {
    return top + PANEL * (high - value) / (high - low);
  }
}
