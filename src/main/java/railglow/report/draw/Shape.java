package railglow.report.draw;

import java.awt.image.BufferedImage;

/** One thing drawn. Coordinates are in the sketch's own units, x right, y down. */
public sealed interface Shape {
  /** Where a text lies against its point. */
  enum Anchor {
    START,
    MIDDLE,
    END
  }

  /**
   * A line through points; closed and filled for an area.
   *
   * @param fill 0xRRGGBB, or {@link Pen#NO_FILL}
   */
  record Path(double[] xs, double[] ys, boolean closed, Pen pen) implements Shape {}

  /**
   * An ellipse.
   *
   * @param tiltDegrees of its first half axis, clockwise as seen
   */
  record Ellipse(double x, double y, double halfX, double halfY, double tiltDegrees, Pen pen)
      implements Shape {}

  /**
   * A line of text.
   *
   * @param y of its base line
   * @param size of an em
   * @param halo 0xRRGGBB drawn round the letters so that they are read on any ground; {@link
   *     Pen#NO_FILL} for none
   */
  record Text(
      double x, double y, String text, double size, boolean bold, Anchor anchor, int rgb, int halo)
      implements Shape {}

  /** Pixels, each shown as a sharp rectangle. */
  record Raster(double x, double y, double width, double height, BufferedImage image)
      implements Shape {}
}
