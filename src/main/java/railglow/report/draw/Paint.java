package railglow.report.draw;

import java.awt.AlphaComposite;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Composite;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.font.GlyphVector;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.image.BufferedImage;

/** A sketch drawn with Java's own graphics: into a picture, or a page of a PDF. Stateless. */
public final class Paint {
  private Paint() {}

  /**
   * The sketch as a picture on white.
   *
   * @param scale pixels for each unit of the sketch
   */
  public static BufferedImage picture(Sketch sketch, double scale) {
    BufferedImage image =
        new BufferedImage(
            (int) Math.ceil(sketch.width() * scale),
            (int) Math.ceil(sketch.height() * scale),
            BufferedImage.TYPE_INT_RGB);
    Graphics2D graphics = image.createGraphics();
    try {
      graphics.setColor(Color.WHITE);
      graphics.fillRect(0, 0, image.getWidth(), image.getHeight());
      graphics.scale(scale, scale);
      draw(sketch, graphics);
    } finally {
      graphics.dispose();
    }
    return image;
  }

  public static void draw(Sketch sketch, Graphics2D graphics) {
    graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    graphics.setRenderingHint(
        RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_NEAREST_NEIGHBOR);
    graphics.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    for (Shape shape : sketch.shapes()) {
      if (shape instanceof Shape.Path path) {
        outline(graphics, path2d(path), path.pen());
      } else if (shape instanceof Shape.Ellipse e) {
        Ellipse2D plain =
            new Ellipse2D.Double(-e.halfX(), -e.halfY(), 2 * e.halfX(), 2 * e.halfY());
        AffineTransform place = AffineTransform.getTranslateInstance(e.x(), e.y());
        place.rotate(Math.toRadians(e.tiltDegrees()));
        outline(graphics, place.createTransformedShape(plain), e.pen());
      } else if (shape instanceof Shape.Text text) {
        text(graphics, text);
      } else if (shape instanceof Shape.Raster raster) {
        AffineTransform place = AffineTransform.getTranslateInstance(raster.x(), raster.y());
        place.scale(
            raster.width() / raster.image().getWidth(),
            raster.height() / raster.image().getHeight());
        graphics.drawImage(raster.image(), place, null);
      }
    }
  }

  private static Path2D path2d(Shape.Path path) {
    Path2D line = new Path2D.Double();
    for (int i = 0; i < path.xs().length; i++) {
      if (i == 0) {
        line.moveTo(path.xs()[i], path.ys()[i]);
      } else {
        line.lineTo(path.xs()[i], path.ys()[i]);
      }
    }
    if (path.closed()) {
      line.closePath();
    }
    return line;
  }

  private static void outline(Graphics2D graphics, java.awt.Shape shape, Pen pen) {
    if (pen.fill() != Pen.NO_FILL) {
      Composite before = graphics.getComposite();
      graphics.setComposite(
          AlphaComposite.getInstance(AlphaComposite.SRC_OVER, (float) pen.opacity()));
      graphics.setColor(new Color(pen.fill()));
      graphics.fill(shape);
      graphics.setComposite(before);
    }
    if (pen.width() > 0) {
      graphics.setColor(new Color(pen.rgb()));
      graphics.setStroke(
          new BasicStroke(
              (float) pen.width(),
              BasicStroke.CAP_BUTT,
              BasicStroke.JOIN_ROUND,
              1,
              pen.dash() > 0 ? new float[] {(float) pen.dash()} : null,
              0));
      graphics.draw(shape);
    }
  }

  private static void text(Graphics2D graphics, Shape.Text text) {
    Font font =
        new Font(Font.SANS_SERIF, text.bold() ? Font.BOLD : Font.PLAIN, 1)
            .deriveFont((float) text.size());
    GlyphVector glyphs = font.createGlyphVector(graphics.getFontRenderContext(), text.text());
    double width = glyphs.getLogicalBounds().getWidth();
    double x =
        switch (text.anchor()) {
          case START -> text.x();
          case MIDDLE -> text.x() - width / 2;
          case END -> text.x() - width;
        };
    java.awt.Shape letters = glyphs.getOutline((float) x, (float) text.y());
    if (text.halo() != Pen.NO_FILL) {
      graphics.setColor(new Color(text.halo()));
      graphics.setStroke(
          new BasicStroke(
              (float) (text.size() / 4), BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
      graphics.draw(letters);
    }
    graphics.setColor(new Color(text.rgb()));
    graphics.fill(letters);
  }
}
