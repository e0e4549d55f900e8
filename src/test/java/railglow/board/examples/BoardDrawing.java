package railglow.board.examples;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.awt.geom.RoundRectangle2D;
import java.awt.image.BufferedImage;
import java.util.Random;

/** Draws a board from above: substrate, copper, parts, printed names and a millimetre scale. */
final class BoardDrawing {
  static final int PIXELS_PER_MILLIMETRE = 10;
  static final int MARGIN = 50;

  private static final Color BENCH = new Color(0xE8, 0xE5, 0xDE);
  private static final Color MASK = new Color(0x1E, 0x52, 0x47);
  private static final Color COPPER = new Color(0x2C, 0x6A, 0x5A);
  private static final Color TIN = new Color(0xC7, 0xCB, 0xC9);
  private static final Color PRINT = new Color(0xF1, 0xF2, 0xEA);

  private final ExampleBoard board;
  private final BufferedImage image;
  private final Graphics2D g;
  private final AffineTransform millimetres;

  private BoardDrawing(ExampleBoard board) {
    this.board = board;
    this.image =
        new BufferedImage(
            (int) board.width() * PIXELS_PER_MILLIMETRE + 2 * MARGIN,
            (int) board.height() * PIXELS_PER_MILLIMETRE + 2 * MARGIN,
            BufferedImage.TYPE_INT_RGB);
    this.g = image.createGraphics();
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    g.setRenderingHint(
        RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
    this.millimetres =
        new AffineTransform(
            PIXELS_PER_MILLIMETRE,
            0,
            0,
            -PIXELS_PER_MILLIMETRE,
            MARGIN,
            image.getHeight() - MARGIN);
  }

  static BufferedImage of(ExampleBoard board) {
    BoardDrawing drawing = new BoardDrawing(board);
    drawing.bench();
    drawing.g.transform(drawing.millimetres);
    drawing.substrate();
    drawing.copper();
    drawing.marks();
    drawing.parts();
    drawing.g.setTransform(new AffineTransform());
    new Labels(board, drawing.g, MARGIN, PIXELS_PER_MILLIMETRE, drawing.image.getHeight()).draw();
    drawing.g.dispose();
    return drawing.image;
  }

  private void bench() {
    g.setColor(BENCH);
    g.fillRect(0, 0, image.getWidth(), image.getHeight());
    g.setColor(new Color(0x55, 0x55, 0x50));
    g.setFont(new Font(Font.SANS_SERIF, Font.PLAIN, 14));
    int bottom = image.getHeight() - MARGIN;
    for (int mm = 0; mm <= board.width(); mm += 10) {
      int x = MARGIN + mm * PIXELS_PER_MILLIMETRE;
      g.draw(new Line2D.Double(x, bottom + 8, x, bottom + 16));
      String text = mm + (mm + 10 > board.width() ? " mm" : "");
      g.drawString(text, x - g.getFontMetrics().stringWidth(Integer.toString(mm)) / 2, bottom + 34);
    }
    for (int mm = 0; mm <= board.height(); mm += 10) {
      int y = bottom - mm * PIXELS_PER_MILLIMETRE;
      g.draw(new Line2D.Double(MARGIN - 16, y, MARGIN - 8, y));
      String text = Integer.toString(mm);
      g.drawString(text, MARGIN - 20 - g.getFontMetrics().stringWidth(text), y + 5);
    }
  }

  private void substrate() {
    g.setColor(new Color(0, 0, 0, 50));
    g.fill(new RoundRectangle2D.Double(0.5, -0.6, board.width(), board.height(), 6, 6));
    g.setColor(MASK);
    g.fill(new RoundRectangle2D.Double(0, 0, board.width(), board.height(), 6, 6));
    g.setColor(new Color(0x25, 0x5C, 0x50));
    g.setStroke(new BasicStroke(0.4f));
    g.draw(new RoundRectangle2D.Double(0.8, 0.8, board.width() - 1.6, board.height() - 1.6, 5, 5));
  }

  private void copper() {
    for (Traces.Trace trace : Traces.of(board)) {
      g.setColor(COPPER);
      g.setStroke(
          new BasicStroke((float) trace.width(), BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
      g.draw(trace.path());
    }
    Random random = new Random(12);
    for (int i = 0; i < board.width() * board.height() / 60; i++) {
      double x = 3 + random.nextDouble() * (board.width() - 6);
      double y = 3 + random.nextDouble() * (board.height() - 6);
      g.setColor(COPPER);
      g.fill(new Ellipse2D.Double(x - 0.35, y - 0.35, 0.7, 0.7));
      g.setColor(new Color(0x14, 0x38, 0x31));
      g.fill(new Ellipse2D.Double(x - 0.15, y - 0.15, 0.3, 0.3));
    }
  }

  private void marks() {
    for (double[] hole : board.holes()) {
      disc(hole, 3.0, TIN);
      disc(hole, 1.6, BENCH);
    }
    for (double[] fiducial : board.fiducials()) {
      disc(fiducial, 1.1, new Color(0x17, 0x40, 0x38));
      disc(fiducial, 0.55, new Color(0xD9, 0xC8, 0x8B));
    }
  }

  private void disc(double[] at, double radius, Color colour) {
    g.setColor(colour);
    g.fill(new Ellipse2D.Double(at[0] - radius, at[1] - radius, 2 * radius, 2 * radius));
  }

  private void parts() {
    for (ExamplePart part : board.parts()) {
      if (part.side() == railglow.board.Side.BOTTOM) {
        continue;
      }
      for (PadPlan.PadPlace pad : PadPlan.of(part)) {
        AffineTransform before = g.getTransform();
        g.translate(pad.x(), pad.y());
        g.rotate(Math.toRadians(pad.rotation()));
        g.setColor(TIN);
        g.fill(
            pad.drilled()
                ? new Ellipse2D.Double(-pad.width() / 2, -pad.width() / 2, pad.width(), pad.width())
                : new Rectangle2D.Double(
                    -pad.width() / 2, -pad.height() / 2, pad.width(), pad.height()));
        g.setTransform(before);
      }
      AffineTransform before = g.getTransform();
      g.translate(part.x(), part.y());
      g.rotate(Math.toRadians(part.rotation()));
      PartDrawing.draw(g, part);
      g.setTransform(before);
    }
  }

  static Color print() {
    return PRINT;
  }
}
