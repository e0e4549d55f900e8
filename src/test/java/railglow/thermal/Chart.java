package railglow.thermal;

import railglow.report.draw.Pen;
import railglow.report.draw.Shape;
import railglow.report.draw.Sketch;
import railglow.report.draw.Ticks;

/** A plain chart of curves and points with errors, for the pictures of the studies. */
final class Chart {
  private static final double WIDTH = 860;
  private static final double HEIGHT = 500;
  private static final double LEFT = 74;
  private static final double RIGHT = 24;
  private static final double TOP = 44;
  private static final double BOTTOM = 62;
  private static final double TEXT = 15;
  private static final int BAND = 0xDCEBDD;

  private final Sketch sketch = new Sketch(WIDTH, HEIGHT);
  private final double xLow;
  private final double xHigh;
  private final double yLow;
  private final double yHigh;
  private int legends;

  Chart(
      String title,
      String across,
      String up,
      double xLow,
      double xHigh,
      double yLow,
      double yHigh) {
    this.xLow = xLow;
    this.xHigh = xHigh;
    this.yLow = yLow;
    this.yHigh = yHigh;
    sketch.rectangle(0, 0, WIDTH, HEIGHT, Pen.fill(Sketch.WHITE, 1));
    sketch.text(LEFT, 26, title, TEXT + 2, Shape.Anchor.START);
    sketch.text((LEFT + WIDTH - RIGHT) / 2, HEIGHT - 14, across, TEXT, Shape.Anchor.MIDDLE);
    sketch.text(WIDTH - RIGHT, 26, up, TEXT, Shape.Anchor.END);
  }

  /** A range of the upright axis with a light ground, drawn under everything that comes later. */
  Chart band(double low, double high) {
    sketch.rectangle(LEFT, y(high), WIDTH - RIGHT - LEFT, y(low) - y(high), Pen.fill(BAND, 1));
    return this;
  }

  /** The axes; after bands, before curves. */
  Chart axes() {
    double stepX = Ticks.step(xLow, xHigh, 9);
    for (double tick : Ticks.between(xLow, xHigh, 9)) {
      sketch.line(x(tick), TOP, x(tick), HEIGHT - BOTTOM, Pen.line(Sketch.GRID, 1));
      sketch.text(
          x(tick), HEIGHT - BOTTOM + 20, Ticks.text(tick, stepX), TEXT, Shape.Anchor.MIDDLE);
    }
    double stepY = Ticks.step(yLow, yHigh, 7);
    for (double tick : Ticks.between(yLow, yHigh, 7)) {
      sketch.line(LEFT, y(tick), WIDTH - RIGHT, y(tick), Pen.line(Sketch.GRID, 1));
      sketch.text(LEFT - 8, y(tick) + 5, Ticks.text(tick, stepY), TEXT, Shape.Anchor.END);
    }
    sketch.rectangle(
        LEFT, TOP, WIDTH - LEFT - RIGHT, HEIGHT - TOP - BOTTOM, Pen.line(Sketch.FAINT, 1));
    return this;
  }

  Chart level(double at) {
    sketch.line(LEFT, y(at), WIDTH - RIGHT, y(at), Pen.dashed(Sketch.FAINT, 1.4, 6));
    return this;
  }

  /** A line through places, which lie inside the axes. */
  Chart curve(String name, int rgb, boolean dashed, double[] xs, double[] ys) {
    double[] right = new double[xs.length];
    double[] down = new double[xs.length];
    for (int i = 0; i < xs.length; i++) {
      right[i] = x(xs[i]);
      down[i] = y(ys[i]);
    }
    Pen pen = dashed ? Pen.dashed(rgb, 2, 5) : Pen.line(rgb, 2);
    sketch.add(new Shape.Path(right, down, false, pen));
    if (!name.isEmpty()) {
      double at = legend(name);
      sketch.line(WIDTH - 300, at, WIDTH - 268, at, pen);
    }
    return this;
  }

  /** Dots with upright errors. */
  Chart points(String name, int rgb, double[] xs, double[] ys, double[] lows, double[] highs) {
    for (int i = 0; i < xs.length; i++) {
      double low = Math.max(yLow, lows[i]);
      sketch.line(x(xs[i]), y(low), x(xs[i]), y(highs[i]), Pen.line(rgb, 1.4));
      dot(x(xs[i]), y(ys[i]), rgb);
    }
    dot(WIDTH - 284, legend(name), rgb);
    return this;
  }

  private void dot(double x, double y, int rgb) {
    sketch.add(new Shape.Ellipse(x, y, 4.5, 4.5, 0, Pen.fill(rgb, 1)));
  }

  private double legend(String name) {
    double at = HEIGHT - BOTTOM - 20 - 22 * legends++;
    sketch.text(WIDTH - 258, at + 5, name, TEXT, Shape.Anchor.START);
    return at;
  }

  Sketch sketch() {
    return sketch;
  }

  private double x(double value) {
    return LEFT + (WIDTH - LEFT - RIGHT) * (value - xLow) / (xHigh - xLow);
  }

  private double y(double value) {
    return TOP + (HEIGHT - TOP - BOTTOM) * (yHigh - value) / (yHigh - yLow);
  }
}
