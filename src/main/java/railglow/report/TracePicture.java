package railglow.report;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import railglow.report.draw.Pen;
import railglow.report.draw.Shape;
import railglow.report.draw.Sketch;
import railglow.report.draw.Ticks;

/**
 * Volts, amperes, watts, the hottest pixel and followed places against time, the time with the
 * output on shaded, marks as upright lines. Pure.
 */
final class TracePicture {
  static final double WIDTH = 1134;
  static final double LEFT = 70;
  static final double RIGHT = 16;
  private static final double PANEL = 118;
  private static final double GAP = 30;
  private static final double BOTTOM = 44;
  private static final int SHADE = 0xF3DDB8;
  private static final int ELECTRICAL = 0x1F4E79;
  private static final int THERMAL = 0x8A3B12;
  private static final double LINE = 1.6;
  private static final double THIN = 0.7;

  private TracePicture() {}

  /**
   * One line of a panel.
   *
   * @param seconds never falling
   * @param values as many; what is not finite is left out
   */
  record Curve(double[] seconds, double[] values, double width) {}

  /** One axis with its lines, drawn in order. */
  record Panel(String title, int rgb, List<Curve> curves) {
    boolean isEmpty() {
      return curves.stream()
          .noneMatch(curve -> java.util.Arrays.stream(curve.values).anyMatch(Double::isFinite));
    }
  }

  /** A named moment. */
  record Mark(double seconds, String label) {}

  /** A panel of a place's mean, with its lowest and highest pixel as thin lines. */
  static Panel ofPlace(String title, double[] seconds, double[] mean, double[] low, double[] high) {
    return new Panel(
        title,
        THERMAL,
        List.of(
            new Curve(seconds, low, THIN),
            new Curve(seconds, high, THIN),
            new Curve(seconds, mean, LINE)));
  }

  /**
   * Draws a trace.
   *
   * @param texts names the panels
   */
  static Sketch of(Trace trace, Texts texts) {
    return of(trace, List.of(), List.of(), texts);
  }

  /** As {@link #of(Trace, Texts)}, with further panels and marks. */
  static Sketch of(Trace trace, List<Panel> further, List<Mark> marks, Texts texts) {
    List<Panel> panels = new ArrayList<>();
    panels.add(panel(trace, texts.get("trace.volts"), ELECTRICAL, Trace.Row::volts));
    panels.add(panel(trace, texts.get("trace.amperes"), ELECTRICAL, Trace.Row::amperes));
    panels.add(panel(trace, texts.get("trace.watts"), ELECTRICAL, Trace.Row::watts));
    panels.add(panel(trace, texts.get("trace.rise"), THERMAL, Trace.Row::riseKelvin));
    panels.add(panel(trace, texts.get("trace.celsius"), THERMAL, Trace.Row::celsius));
    panels.addAll(further);
    panels.removeIf(Panel::isEmpty);
    double height = Math.max(1, panels.size()) * (PANEL + GAP) + BOTTOM;
    Sketch sketch = new Sketch(WIDTH, height);
    double end = trace.endSeconds() > 0 ? trace.endSeconds() : 1;
    double bottom = panels.size() * (PANEL + GAP);
    for (int i = 0; i < panels.size(); i++) {
      draw(sketch, trace, panels.get(i), GAP + i * (PANEL + GAP), end);
    }
    marks(sketch, marks, bottom, end);
    double step = Ticks.step(0, end, 12);
    for (double tick : Ticks.between(0, end, 12)) {
      sketch.text(x(tick, end), bottom + 20, Ticks.text(tick, step), 14, Shape.Anchor.MIDDLE);
    }
    sketch.text(
        (LEFT + WIDTH - RIGHT) / 2, bottom + 40, texts.get("trace.time"), 14, Shape.Anchor.MIDDLE);
    return sketch;
  }

  private static Panel panel(
      Trace trace, String title, int rgb, ToDoubleFunction<Trace.Row> value) {
    List<Trace.Row> rows =
        trace.rows().stream()
            .filter(
                row -> {
                  double v = value.applyAsDouble(row);
                  return Double.isFinite(v) && Math.abs(v) < 9.9e37;
                })
            .toList();
    return new Panel(
        title,
        rgb,
        List.of(
            new Curve(
                rows.stream().mapToDouble(Trace.Row::seconds).toArray(),
                rows.stream().mapToDouble(value).toArray(),
                LINE)));
  }

  /** Labels that would run into the one before are left out; the table has them all. */
  private static void marks(Sketch sketch, List<Mark> marks, double bottom, double end) {
    double free = Double.NEGATIVE_INFINITY;
    for (Mark mark : marks) {
      double x = x(mark.seconds, end);
      sketch.line(x, GAP, x, bottom, Pen.dashed(Sketch.INK, 1.2, 4));
      double half = Sketch.textWidth(mark.label, 12, true) / 2 + 3;
      if (x - half > free) {
        sketch.label(x, GAP + 14, mark.label, 12, Shape.Anchor.MIDDLE);
        free = x + half;
      }
    }
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
    for (Curve curve : panel.curves) {
      for (double value : curve.values) {
        if (Double.isFinite(value)) {
          high = Math.max(high, value);
          lowest = Math.min(lowest, value);
        }
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
    for (Curve curve : panel.curves) {
      line(sketch, curve, panel.rgb, top, new double[] {low, high, end});
    }
    sketch.rectangle(LEFT, top, WIDTH - LEFT - RIGHT, PANEL, Pen.line(Sketch.FAINT, 1));
  }

  /** At most the lowest and highest value of each column of the drawing; gaps stay gaps. */
  private static void line(Sketch sketch, Curve curve, int rgb, double top, double[] lowHighEnd) {
    List<double[]> points = new ArrayList<>();
    long column = Long.MIN_VALUE;
    double[] lowest = null;
    double[] highest = null;
    for (int i = 0; i < curve.values.length; i++) {
      if (!Double.isFinite(curve.values[i]) || curve.seconds[i] < 0) {
        continue; // frames from just before the start have no place on the axis
      }
      double[] point = {
        x(curve.seconds[i], lowHighEnd[2]), y(curve.values[i], lowHighEnd[0], lowHighEnd[1], top)
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
            Pen.line(rgb, curve.width)));
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
