package railglow.board.examples;

import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;

/** Prints references beside their parts where there is room, and the board's name. */
final class Labels {
  private final ExampleBoard board;
  private final Graphics2D g;
  private final int margin;
  private final int scale;
  private final int imageHeight;
  private final List<Rectangle2D> taken = new ArrayList<>();

  Labels(ExampleBoard board, Graphics2D g, int margin, int scale, int imageHeight) {
    this.board = board;
    this.g = g;
    this.margin = margin;
    this.scale = scale;
    this.imageHeight = imageHeight;
  }

  void draw() {
    for (ExamplePart part : board.parts()) {
      taken.add(body(part));
    }
    for (double[] hole : board.holes()) {
      taken.add(box(hole[0], hole[1], 6, 6));
    }
    for (double[] fiducial : board.fiducials()) {
      taken.add(box(fiducial[0], fiducial[1], 2.2, 2.2));
    }
    g.setColor(BoardDrawing.print());
    for (ExamplePart part : board.parts()) {
      if (part.side() == railglow.board.Side.TOP) {
        reference(part);
      }
    }
    title();
  }

  private Rectangle2D body(ExamplePart part) {
    double[] corners = part.outline().corners();
    double left = Double.POSITIVE_INFINITY;
    double right = Double.NEGATIVE_INFINITY;
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < 8; i += 2) {
      left = Math.min(left, corners[i]);
      right = Math.max(right, corners[i]);
      low = Math.min(low, corners[i + 1]);
      high = Math.max(high, corners[i + 1]);
    }
    return box((left + right) / 2, (low + high) / 2, right - left, high - low);
  }

  private Rectangle2D box(double x, double y, double width, double height) {
    return new Rectangle2D.Double(
        margin + (x - width / 2) * scale,
        imageHeight - margin - (y + height / 2) * scale,
        width * scale,
        height * scale);
  }

  private void reference(ExamplePart part) {
    Rectangle2D body = body(part);
    boolean large = Math.min(body.getWidth(), body.getHeight()) > 45;
    g.setFont(new Font(Font.SANS_SERIF, Font.BOLD, large ? 17 : 13));
    FontMetrics metrics = g.getFontMetrics();
    double width = metrics.stringWidth(part.reference());
    double height = metrics.getAscent() - 2;
    if (large) {
      // Dark bodies carry their name themselves, on a plate that keeps it readable.
      Rectangle2D plate =
          new Rectangle2D.Double(
              body.getCenterX() - width / 2 - 4,
              body.getCenterY() - height / 2 - 3,
              width + 8,
              height + 6);
      g.setColor(new java.awt.Color(0x20, 0x24, 0x28, 190));
      g.fill(plate);
      g.setColor(BoardDrawing.print());
      print(part.reference(), plate.getX() + 4, plate.getY() + 3 + height);
      return;
    }
    double gap = 3;
    double[][] places = {
      {body.getCenterX() - width / 2, body.getY() - gap - height},
      {body.getCenterX() - width / 2, body.getMaxY() + gap},
      {body.getMaxX() + gap, body.getCenterY() - height / 2},
      {body.getX() - gap - width, body.getCenterY() - height / 2},
      {body.getMaxX() + gap, body.getY() - gap - height / 2},
      {body.getX() - gap - width, body.getY() - gap - height / 2},
    };
    for (double[] place : places) {
      Rectangle2D label = new Rectangle2D.Double(place[0], place[1], width, height);
      if (taken.stream().noneMatch(label::intersects)) {
        taken.add(label);
        print(part.reference(), place[0], place[1] + height);
        return;
      }
    }
    print(part.reference(), places[0][0], places[0][1] + height);
  }

  private void print(String text, double x, double baseline) {
    g.drawString(text, (float) x, (float) baseline);
  }

  private void title() {
    g.setFont(new Font(Font.SANS_SERIF, Font.BOLD, 34));
    Rectangle2D first = board.titlePlace();
    double x = margin + first.getX() * scale;
    double y = imageHeight - margin - first.getY() * scale;
    print(board.title(), x, y);
    g.setFont(new Font(Font.SANS_SERIF, Font.PLAIN, 15));
    print(board.subtitle(), x, y + 22);
  }
}
