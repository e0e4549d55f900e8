package railglow.report.draw;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** A drawing as a list of shapes, drawn in order; not yet ink. Not thread-safe while it is made. */
public final class Sketch {
  /** Dark text and lines on a light ground. */
  public static final int INK = 0x1E262B;

  public static final int FAINT = 0x8A949A;
  public static final int GRID = 0xDDE2E4;
  public static final int WHITE = 0xFFFFFF;

  private final double width;
  private final double height;
  private final List<Shape> shapes = new ArrayList<>();

  public Sketch(double width, double height) {
    this.width = width;
    this.height = height;
  }

  public double width() {
    return width;
  }

  public double height() {
    return height;
  }

  public List<Shape> shapes() {
    return Collections.unmodifiableList(shapes);
  }

  public Sketch add(Shape shape) {
    shapes.add(shape);
    return this;
  }

  public Sketch line(double x1, double y1, double x2, double y2, Pen pen) {
    return add(new Shape.Path(new double[] {x1, x2}, new double[] {y1, y2}, false, pen));
  }

  public Sketch rectangle(double x, double y, double wide, double high, Pen pen) {
    return add(
        new Shape.Path(
            new double[] {x, x + wide, x + wide, x},
            new double[] {y, y, y + high, y + high},
            true,
            pen));
  }

  public Sketch text(double x, double y, String text, double size, Shape.Anchor anchor) {
    return add(new Shape.Text(x, y, text, size, false, anchor, INK, Pen.NO_FILL));
  }

  /** Text on a picture: white with a dark halo. */
  public Sketch label(double x, double y, String text, double size, Shape.Anchor anchor) {
    return add(new Shape.Text(x, y, text, size, true, anchor, WHITE, INK));
  }

  /** How wide a line of text is at most, for any usual sans-serif font. */
  public static double textWidth(String text, double size, boolean bold) {
    return text.length() * size * (bold ? 0.7 : 0.62);
  }
}
