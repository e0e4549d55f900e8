package railglow.board.examples;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Rectangle2D;
import java.awt.geom.RoundRectangle2D;

/** Draws one part's body about the origin, in millimetres, unrotated. */
final class PartDrawing {
  private static final Color TIN = new Color(0xC7, 0xCB, 0xC9);
  private static final Color BLACK = new Color(0x24, 0x26, 0x29);
  private static final Color EDGE = new Color(0, 0, 0, 90);
  private static final Color CERAMIC = new Color(0xC2, 0x9B, 0x6C);

  private final Graphics2D g;
  private final double w;
  private final double h;

  private PartDrawing(Graphics2D g, double w, double h) {
    this.g = g;
    this.w = w;
    this.h = h;
  }

  static void draw(Graphics2D g, ExamplePart part) {
    var outline = part.outline();
    PartDrawing drawing =
        new PartDrawing(g, outline.widthMillimetres(), outline.heightMillimetres());
    String name = part.packageName();
    char kind = part.reference().charAt(0);
    g.setStroke(new BasicStroke(0.08f));
    if (name.startsWith("CP_")) {
      drawing.can();
    } else if (name.startsWith("TERM")) {
      drawing.terminal(part.nets().size());
    } else if (name.startsWith("HDR")) {
      drawing.header(part.nets().size());
    } else if (name.startsWith("RELAY")) {
      drawing.block(new Color(0x2B, 0x46, 0x63), 0.8, 0.97);
    } else if (name.startsWith("MOD")) {
      drawing.module();
    } else if (name.startsWith("IND")) {
      drawing.inductor();
    } else if (name.startsWith("XTAL")) {
      drawing.block(new Color(0xB9, 0xBC, 0xBE), 0.5, 0.94);
    } else if (name.startsWith("LED")) {
      drawing.chip(new Color(0xE9, 0xEC, 0xDF), 0.2);
      g.setColor(new Color(0x7F, 0xB8, 0x6B));
      g.fill(new Ellipse2D.Double(-0.4, -0.4, 0.8, 0.8));
    } else if (name.startsWith("SM")) {
      drawing.diode();
    } else if (kind == 'C') {
      drawing.chip(CERAMIC, 0.22);
    } else if (kind == 'R' || kind == 'F') {
      drawing.chip(name.equals("0603") ? BLACK : new Color(0xD9, 0xD5, 0xC6), 0.2);
    } else {
      drawing.moulded(name);
    }
  }

  private void body(Color colour, double width, double height, double radius) {
    RoundRectangle2D shape =
        new RoundRectangle2D.Double(-width / 2, -height / 2, width, height, radius, radius);
    g.setColor(colour);
    g.fill(shape);
    g.setColor(EDGE);
    g.draw(shape);
  }

  private void block(Color colour, double radius, double share) {
    body(colour, w * share, h * share, radius);
    body(lighter(colour), w * share - 0.8, h * share - 0.8, radius);
  }

  private static Color lighter(Color c) {
    return new Color(
        Math.min(255, c.getRed() + 14),
        Math.min(255, c.getGreen() + 14),
        Math.min(255, c.getBlue() + 14));
  }

  private void chip(Color colour, double end) {
    body(TIN, w, h, 0.15);
    body(colour, w * (1 - 2 * end), h, 0.1);
  }

  private void diode() {
    body(BLACK, w * 0.8, h, 0.2);
    g.setColor(new Color(0xDD, 0xDD, 0xDA));
    g.fill(new Rectangle2D.Double(-w * 0.32, -h / 2, w * 0.08, h));
  }

  private void moulded(String name) {
    boolean flat = name.contains("QFP");
    boolean none = name.startsWith("QFN") || name.startsWith("BGA");
    double bodyW = none ? w : flat ? w - 2 : w * 0.66;
    double bodyH = none ? h : flat ? h - 2 : name.startsWith("SOT-223") ? h * 0.98 : h * 0.97;
    body(BLACK, bodyW, bodyH, 0.3);
    double dot = Math.min(bodyW, bodyH) * 0.09 + 0.1;
    g.setColor(new Color(0x6A, 0x6E, 0x73));
    g.fill(new Ellipse2D.Double(-bodyW / 2 + dot * 0.9, bodyH / 2 - dot * 1.9, dot, dot));
  }

  private void inductor() {
    body(new Color(0x4A, 0x4C, 0x50), w * 0.96, h * 0.96, w * 0.22);
    body(new Color(0x5A, 0x5D, 0x61), w * 0.72, h * 0.72, w * 0.7);
  }

  private void can() {
    g.setColor(BLACK);
    g.fill(new Ellipse2D.Double(-w / 2, -h / 2, w, h));
    g.setColor(new Color(0xB4, 0xB9, 0xBE));
    g.fill(new Ellipse2D.Double(-w * 0.42, -h * 0.42, w * 0.84, h * 0.84));
    g.setColor(new Color(0x8D, 0x93, 0x99));
    g.setStroke(new BasicStroke(0.18f));
    g.draw(new java.awt.geom.Line2D.Double(-w * 0.3, 0, w * 0.3, 0));
    g.draw(new java.awt.geom.Line2D.Double(0, -h * 0.3, 0, h * 0.3));
  }

  private void terminal(int poles) {
    body(new Color(0x3C, 0x6E, 0x86), w, h, 0.4);
    body(new Color(0x49, 0x80, 0x9A), w - 0.6, h * 0.55, 0.4);
    for (int i = 0; i < poles; i++) {
      double x = (i - (poles - 1) / 2.0) * 5.08;
      g.setColor(TIN);
      g.fill(new Ellipse2D.Double(x - 1.6, -1.6, 3.2, 3.2));
      g.setColor(new Color(0x7B, 0x80, 0x82));
      g.fill(new Rectangle2D.Double(x - 1.4, -0.25, 2.8, 0.5));
    }
  }

  private void header(int pins) {
    body(BLACK, w, h, 0.2);
    g.setColor(new Color(0xD8, 0xC0, 0x7A));
    for (int i = 0; i < pins; i++) {
      double y = (i - (pins - 1) / 2.0) * 2.54;
      g.fill(new Rectangle2D.Double(-0.4, y - 0.4, 0.8, 0.8));
    }
  }

  private void module() {
    body(new Color(0x1F, 0x3A, 0x4E), w * 0.98, h, 0.3);
    g.setColor(new Color(0xB9, 0xBE, 0xC0));
    g.fill(new Rectangle2D.Double(-w * 0.4, -h * 0.42, w * 0.8, h * 0.62));
    g.setColor(new Color(0xD8, 0xC0, 0x7A));
    g.setStroke(new BasicStroke(0.5f));
    double y = h * 0.27;
    for (int i = 0; i < 5; i++) {
      double x = -w * 0.34 + i * w * 0.15;
      g.draw(new Rectangle2D.Double(x, y, w * 0.075, h * 0.16));
    }
  }
}
