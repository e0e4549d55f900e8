package railglow.report.draw;

import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import railglow.thermal.Plane;

/**
 * A plane, or a part of it, drawn large with its colour bar, and the way from its pixels to the
 * sketch. Integer pixel coordinates are pixel centres. Not thread-safe while it is made.
 */
public final class PlaneView {
  private static final double TOP = 30;
  private static final double BAR_GAP = 24;
  private static final double BAR = 24;
  private static final double BAR_TEXT = 86;

  private final Sketch sketch;
  private final double scale;
  private final int left;
  private final int top;
  private final Rectangle2D area;

  private PlaneView(Sketch sketch, double scale, int left, int top, Rectangle2D area) {
    this.sketch = sketch;
    this.scale = scale;
    this.left = left;
    this.top = top;
    this.area = area;
  }

  /** The whole plane, as many whole sketch units a pixel as fit into the size. */
  public static PlaneView whole(
      Plane plane, ColourScale colours, double maxWidth, double maxHeight) {
    return part(plane, colours, 0, 0, plane.width(), plane.height(), maxWidth, maxHeight);
  }

  public static PlaneView part(
      Plane plane,
      ColourScale colours,
      int left,
      int top,
      int width,
      int height,
      double maxWidth,
      double maxHeight) {
    double fits = Math.min(maxWidth / width, maxHeight / height);
    double scale = fits >= 1 ? Math.floor(fits) : fits;
    Rectangle2D area = new Rectangle2D.Double(0, TOP, width * scale, height * scale);
    Sketch sketch = new Sketch(area.getMaxX() + BAR_GAP + BAR + BAR_TEXT, area.getMaxY() + TOP / 3);
    sketch.add(
        new Shape.Raster(
            0,
            TOP,
            area.getWidth(),
            area.getHeight(),
            colours.picture(plane, left, top, width, height)));
    colours.bar(sketch, area.getMaxX() + BAR_GAP, TOP, BAR, area.getHeight());
    return new PlaneView(sketch, scale, left, top, area);
  }

  public Sketch sketch() {
    return sketch;
  }

  /** Sketch units for each pixel of the plane. */
  public double scale() {
    return scale;
  }

  /** Where the pixels are in the sketch. */
  public Rectangle2D area() {
    return (Rectangle2D) area.clone();
  }

  public double x(double column) {
    return area.getX() + (column - left + 0.5) * scale;
  }

  public double y(double row) {
    return area.getY() + (row - top + 0.5) * scale;
  }

  public boolean shows(double column, double row) {
    return area.contains(x(column), y(row));
  }

  /** A closed outline given in pixels of the plane, cut off at the picture's border. */
  public void outline(double[] columns, double[] rows, Pen... pens) {
    for (Pen pen : pens) {
      for (int i = 0; i < columns.length; i++) {
        int next = (i + 1) % columns.length;
        Line2D line =
            clipped(new Line2D.Double(x(columns[i]), y(rows[i]), x(columns[next]), y(rows[next])));
        if (line != null) {
          sketch.line(line.getX1(), line.getY1(), line.getX2(), line.getY2(), pen);
        }
      }
    }
  }

  /** Liang-Barsky: the part of a line inside the picture; null when there is none. */
  private Line2D clipped(Line2D line) {
    double dx = line.getX2() - line.getX1();
    double dy = line.getY2() - line.getY1();
    double[] p = {-dx, dx, -dy, dy};
    double[] q = {
      line.getX1() - area.getMinX(),
      area.getMaxX() - line.getX1(),
      line.getY1() - area.getMinY(),
      area.getMaxY() - line.getY1()
    };
    double from = 0;
    double to = 1;
    for (int i = 0; i < 4; i++) {
      if (p[i] == 0) {
        if (q[i] < 0) {
          return null;
        }
      } else if (p[i] < 0) {
        from = Math.max(from, q[i] / p[i]);
      } else {
        to = Math.min(to, q[i] / p[i]);
      }
    }
    return from > to
        ? null
        : new Line2D.Double(
            line.getX1() + from * dx,
            line.getY1() + from * dy,
            line.getX1() + to * dx,
            line.getY1() + to * dy);
  }

  /** A bar of a round length in the lower left corner. */
  public void scaleBar(double millimetresPerPixel) {
    if (!(millimetresPerPixel > 0)) {
      return;
    }
    double perMillimetre = scale / millimetresPerPixel;
    double step = Ticks.roundUp(area.getWidth() * 0.08 / perMillimetre);
    double length = step * perMillimetre;
    double x = area.getMinX() + 16;
    double y = area.getMaxY() - 16;
    sketch.line(x - 1.5, y, x + length + 1.5, y, Pen.line(Sketch.INK, 7));
    sketch.line(x, y, x + length, y, Pen.line(Sketch.WHITE, 4));
    sketch.label(x, y - 9, Ticks.text(step, step) + " mm", 15, Shape.Anchor.START);
  }
}
