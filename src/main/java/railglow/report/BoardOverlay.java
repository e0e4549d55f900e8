package railglow.report;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.List;
import railglow.board.Board;
import railglow.board.BoardPicture;
import railglow.board.Clip;
import railglow.board.Suspect;
import railglow.board.geometry.BoardPosition;
import railglow.board.geometry.Outline;
import railglow.board.geometry.PixelPosition;
import railglow.board.geometry.Registration;
import railglow.report.draw.ColourScale;
import railglow.report.draw.Labels;
import railglow.report.draw.Pen;
import railglow.report.draw.Shape;
import railglow.report.draw.Sketch;
import railglow.report.draw.Ticks;
import railglow.thermal.HeatSource;
import railglow.thermal.Plane;

/**
 * The difference over the picture of the board: the picture pale and grey, the heat in colour where
 * it stands out of the noise. Pure.
 *
 * @param board with a registration and a picture
 * @param photograph the picture itself
 */
record BoardOverlay(
    Plane plane,
    ColourScale colours,
    List<HeatSource> sources,
    List<Suspect> suspects,
    Board board,
    BufferedImage photograph,
    Texts texts) {
  private static final double RING = 30;
  private static final double LEAST_RING = 6;
  private static final double TOP = 30;
  private static final double MAX_WIDTH = 1024;
  private static final double LABEL = 18;
  private static final double MOST_OPAQUE = 0.85;
  private static final Pen SUSPECT = Pen.line(Sketch.INK, 1.5);

  Sketch sketch() {
    BoardPicture picture = board.picture().orElseThrow();
    double margin = 2;
    double left = Math.max(0, picture.column(-margin));
    double top = Math.max(0, picture.row(board.heightMillimetres() + margin));
    double right =
        Math.min(photograph.getWidth(), picture.column(board.widthMillimetres() + margin));
    double bottom = Math.min(photograph.getHeight(), picture.row(-margin));
    double scale = Math.min(MAX_WIDTH / (right - left), 900 / (bottom - top));
    int width = (int) Math.max(1, Math.round((right - left) * scale));
    int height = (int) Math.max(1, Math.round((bottom - top) * scale));
    BufferedImage pale = pale(left, top, right, bottom, width, height);
    Mapping mapping = new Mapping(picture, left, top, scale);
    heat(pale, mapping);
    Sketch sketch = new Sketch(width + 134, height + TOP + 10);
    sketch.add(new Shape.Raster(0, TOP, width, height, pale));
    colours.bar(sketch, width + 24, TOP, 24, height);
    marks(sketch, mapping, new Rectangle2D.Double(0, TOP, width, height));
    scaleBar(sketch, mapping, height);
    return sketch;
  }

  /** From millimetres on the board to the drawing and back. */
  private record Mapping(BoardPicture picture, double left, double top, double scale) {
    double x(double xMillimetres) {
      return (picture.column(xMillimetres) - left) * scale;
    }

    double y(double yMillimetres) {
      return TOP + (picture.row(yMillimetres) - top) * scale;
    }

    double xMillimetres(double pixel) {
      return (pixel / scale + left - picture.leftPixel()) / picture.pixelsPerMillimetre();
    }

    double yMillimetres(double pixel) {
      return (picture.bottomPixel() - (pixel / scale + top)) / picture.pixelsPerMillimetre();
    }
  }

  private BufferedImage pale(
      double left, double top, double right, double bottom, int width, int height) {
    BufferedImage pale = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    Graphics2D graphics = pale.createGraphics();
    graphics.setRenderingHint(
        RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BICUBIC);
    graphics.setColor(Color.WHITE);
    graphics.fillRect(0, 0, width, height);
    graphics.drawImage(
        photograph,
        0,
        0,
        width,
        height,
        (int) left,
        (int) top,
        (int) Math.round(right),
        (int) Math.round(bottom),
        null);
    graphics.dispose();
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        int rgb = pale.getRGB(x, y);
        double grey = 0.30 * (rgb >> 16 & 0xFF) + 0.59 * (rgb >> 8 & 0xFF) + 0.11 * (rgb & 0xFF);
        int light = (int) Math.round(105 + 0.55 * grey);
        pale.setRGB(x, y, light << 16 | light << 8 | light);
      }
    }
    return pale;
  }

  private void heat(BufferedImage into, Mapping mapping) {
    Registration registration = board.registration().orElseThrow();
    double start = Math.max(0.15 * colours.high(), 4 * ColourScale.spread(plane));
    double full = Math.max(2 * start, 0.5 * colours.high());
    for (int y = 0; y < into.getHeight(); y++) {
      for (int x = 0; x < into.getWidth(); x++) {
        PixelPosition pixel =
            registration.toPixel(mapping.xMillimetres(x + 0.5), mapping.yMillimetres(y + 0.5));
        double value = at(pixel.column(), pixel.row());
        double share = (Math.abs(value) - start) / (full - start);
        if (share > 0) {
          double opacity = MOST_OPAQUE * Math.min(1, 0.3 + 0.7 * share);
          into.setRGB(x, y, mixed(into.getRGB(x, y), colours.rgb(value), opacity));
        }
      }
    }
  }

  /** Between the four pixels round a place; NaN outside the thermal picture. */
  private double at(double column, double row) {
    int c = (int) Math.floor(column);
    int r = (int) Math.floor(row);
    if (c < 0 || r < 0 || c + 1 >= plane.width() || r + 1 >= plane.height()) {
      return Double.NaN;
    }
    double u = column - c;
    double v = row - r;
    return (1 - v) * ((1 - u) * plane.at(c, r) + u * plane.at(c + 1, r))
        + v * ((1 - u) * plane.at(c, r + 1) + u * plane.at(c + 1, r + 1));
  }

  private static int mixed(int below, int above, double opacity) {
    int mixed = 0;
    for (int shift = 0; shift <= 16; shift += 8) {
      double part = (1 - opacity) * (below >> shift & 0xFF) + opacity * (above >> shift & 0xFF);
      mixed |= (int) Math.round(part) << shift;
    }
    return mixed;
  }

  private void marks(Sketch sketch, Mapping mapping, Rectangle2D area) {
    Registration registration = board.registration().orElseThrow();
    Labels labels =
        new Labels(area.getX() + 4, area.getY() + 4, area.getWidth() - 8, area.getHeight() - 8);
    labels.keepFree(area.getX(), area.getMaxY() - 44, 180, 44);
    for (Suspect suspect : suspects.subList(0, Math.min(3, suspects.size()))) {
      board
          .part(suspect.part())
          .ifPresent(part -> outline(sketch, mapping, Board.outline(part), SUSPECT));
    }
    for (Clip clip : board.care().clips()) {
      for (Pen pen : DifferencePicture.HELD) {
        outline(sketch, mapping, clip.outline(), pen);
      }
    }
    for (int i = 0; i < sources.size(); i++) {
      BoardPosition place = registration.toBoard(sources.get(i).column(), sources.get(i).row());
      double x = mapping.x(place.xMillimetres());
      double y = mapping.y(place.yMillimetres());
      double ring =
          Math.min(
              RING,
              Math.min(
                  Math.min(x - area.getMinX(), area.getMaxX() - x),
                  Math.min(y - area.getMinY(), area.getMaxY() - y)));
      if (ring < LEAST_RING) {
        continue; // not on the board
      }
      for (Pen pen : List.of(Pen.line(Sketch.INK, 4.5), Pen.line(Sketch.WHITE, 2))) {
        sketch.add(new Shape.Ellipse(x, y, ring, ring, 0, pen));
      }
      Rectangle2D thing = new Rectangle2D.Double(x - ring, y - ring, 2 * ring, 2 * ring);
      labels.keepFree(thing.getX(), thing.getY(), thing.getWidth(), thing.getHeight());
      label(sketch, labels, thing, name(i));
    }
    for (Clip clip : board.care().clips()) {
      Outline held = clip.outline();
      double x = mapping.x(held.xMillimetres());
      double y = mapping.y(held.yMillimetres());
      label(sketch, labels, new Rectangle2D.Double(x - 4, y - 4, 8, 8), texts.get("clip.label"));
    }
  }

  /** The first suspect of a source, or the source's number where nothing is suspected. */
  private String name(int source) {
    return suspects.stream()
        .filter(suspect -> suspect.sourceIndex() == source)
        .findFirst()
        .map(Suspect::part)
        .orElse(texts.get("source.label", Integer.toString(source + 1)));
  }

  private static void label(Sketch sketch, Labels labels, Rectangle2D thing, String text) {
    labels
        .place(thing, 300, Sketch.textWidth(text, LABEL, true), LABEL * 1.1)
        .ifPresent(
            placed -> {
              Line2D line = placed.leader();
              sketch.line(
                  line.getX1(), line.getY1(), line.getX2(), line.getY2(), Pen.line(Sketch.INK, 3));
              sketch.label(
                  placed.box().getCenterX(),
                  placed.box().getMaxY() - LABEL * 0.22,
                  text,
                  LABEL,
                  Shape.Anchor.MIDDLE);
            });
  }

  private static void outline(Sketch sketch, Mapping mapping, Outline outline, Pen pen) {
    double[] corners = outline.corners();
    double[] xs = new double[corners.length / 2];
    double[] ys = new double[corners.length / 2];
    for (int i = 0; i < xs.length; i++) {
      xs[i] = mapping.x(corners[2 * i]);
      ys[i] = mapping.y(corners[2 * i + 1]);
    }
    sketch.add(new Shape.Path(xs, ys, true, pen));
  }

  private static void scaleBar(Sketch sketch, Mapping mapping, int height) {
    double perMillimetre = mapping.x(1) - mapping.x(0);
    double step = Ticks.roundUp(80 / perMillimetre);
    double y = TOP + height - 16;
    sketch.line(14.5, y, 17.5 + step * perMillimetre, y, Pen.line(Sketch.INK, 7));
    sketch.line(16, y, 16 + step * perMillimetre, y, Pen.line(Sketch.WHITE, 4));
    sketch.label(16, y - 9, Ticks.text(step, step) + " mm", 15, Shape.Anchor.START);
  }
}
