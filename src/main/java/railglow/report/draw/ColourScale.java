package railglow.report.draw;

import java.awt.image.BufferedImage;
import java.util.Arrays;
import railglow.thermal.Plane;

/**
 * Which value gets which colour.
 *
 * @param low gets the map's first colour; lower values too
 * @param high gets its last
 * @param unit of the values, as printed
 */
public record ColourScale(ColourMap map, double low, double high, String unit) {
  public ColourScale {
    if (!(low < high) || Double.isInfinite(low) || Double.isInfinite(high)) {
      throw new IllegalArgumentException("a colour scale from " + low + " to " + high);
    }
  }

  /** For differences: as far below zero as above it, so that zero is the neutral grey. */
  public static ColourScale aroundZero(double reach, String unit) {
    double rounded = reach > 0 ? Ticks.justAbove(reach) : 1;
    return new ColourScale(ColourMap.DIFFERENCE, -rounded, rounded, unit);
  }

  /** For temperatures: between the lowest and highest hundredth of a percent. */
  public static ColourScale ofRange(Plane plane, String unit) {
    double[] sorted = finite(plane);
    if (sorted.length == 0) {
      return new ColourScale(ColourMap.TEMPERATURE, 0, 1, unit);
    }
    int cut = (int) (sorted.length * 1e-4);
    double low = sorted[cut];
    double high = sorted[sorted.length - 1 - cut];
    double step = Ticks.step(low, high == low ? low + 1 : high, 8);
    double from = Math.floor(low / step) * step;
    double to = Math.ceil(high / step) * step;
    return new ColourScale(ColourMap.TEMPERATURE, from, to > from ? to : from + step, unit);
  }

  /** A robust standard deviation: 1.4826 times the median distance from the median. */
  public static double spread(Plane plane) {
    double[] sorted = finite(plane);
    if (sorted.length == 0) {
      return 0;
    }
    double median = sorted[sorted.length / 2];
    double[] distances = Arrays.stream(sorted).map(v -> Math.abs(v - median)).sorted().toArray();
    return 1.4826 * distances[distances.length / 2];
  }

  private static double[] finite(Plane plane) {
    double[] values = new double[plane.values().length];
    int count = 0;
    for (float value : plane.values()) {
      if (Float.isFinite(value)) {
        values[count++] = value;
      }
    }
    double[] sorted = Arrays.copyOf(values, count);
    Arrays.sort(sorted);
    return sorted;
  }

  public int rgb(double value) {
    return map.rgb((value - low) / (high - low));
  }

  /** One pixel for each pixel of a part of a plane; what lies outside the plane has no value. */
  public BufferedImage picture(Plane plane, int left, int top, int width, int height) {
    BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        int column = left + x;
        int row = top + y;
        boolean inside = column >= 0 && row >= 0 && column < plane.width() && row < plane.height();
        image.setRGB(x, y, rgb(inside ? plane.at(column, row) : Double.NaN));
      }
    }
    return image;
  }

  public BufferedImage picture(Plane plane) {
    return picture(plane, 0, 0, plane.width(), plane.height());
  }

  /** Draws the scale as an upright bar with ticks to its right. */
  public void bar(Sketch sketch, double x, double y, double width, double height) {
    int steps = 255;
    BufferedImage colours = new BufferedImage(1, steps, BufferedImage.TYPE_INT_RGB);
    for (int i = 0; i < steps; i++) {
      colours.setRGB(0, i, map.rgb(1 - i / (steps - 1.0)));
    }
    sketch.add(new Shape.Raster(x, y, width, height, colours));
    sketch.rectangle(x, y, width, height, Pen.line(Sketch.INK, 1));
    int most = (int) Math.max(2, Math.min(10, height / 40));
    double step = Ticks.step(low, high, most);
    for (double tick : Ticks.between(low, high, most)) {
      double at = y + height * (high - tick) / (high - low);
      sketch.line(x + width, at, x + width + 6, at, Pen.line(Sketch.INK, 1));
      sketch.text(x + width + 10, at + 5, Ticks.text(tick, step), 15, Shape.Anchor.START);
    }
    sketch.text(x, y - 10, unit, 15, Shape.Anchor.START);
  }
}
