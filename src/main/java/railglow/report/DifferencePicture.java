package railglow.report;

import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import railglow.board.Suspect;
import railglow.report.draw.ColourScale;
import railglow.report.draw.Labels;
import railglow.report.draw.Pen;
import railglow.report.draw.PlaneView;
import railglow.report.draw.Shape;
import railglow.report.draw.Sketch;
import railglow.thermal.HeatSource;
import railglow.thermal.Plane;

/**
 * ON minus OFF with its heat sources and the parts nearest to them. Pure.
 *
 * @param unit of the plane
 * @param sources strongest first
 * @param placement of parts and clips in the picture
 * @param texts for the labels
 */
record DifferencePicture(
    Plane plane,
    String unit,
    List<HeatSource> sources,
    List<Suspect> suspects,
    Placement placement,
    Texts texts) {
  private static final int RING_CORNERS = 96;
  private static final double MAX_WIDTH = 1024;
  private static final double MAX_HEIGHT = 900;
  private static final int MOST_LABELS = 12;
  private static final double LABEL = 17;
  private static final double SQRT_CHI2_95_2 = 2.4477; // chi-squared, 2 degrees of freedom, 95 %
  private static final Pen CASING = Pen.line(Sketch.INK, 4.5);
  private static final Pen CORE = Pen.line(Sketch.WHITE, 2);

  /** What a clip was said to hold. */
  static final List<Pen> HELD =
      List.of(Pen.line(Sketch.WHITE, 3.5), Pen.dashed(Sketch.INK, 2.5, 5));

  private static final Pen FAINT = Pen.dashed(Sketch.INK, 1, 3);

  /** The colours: far enough for the strongest pixel of a source, or five times the noise. */
  ColourScale colours() {
    double reach = 5 * ColourScale.spread(plane);
    for (HeatSource source : sources) {
      int column = (int) Math.round(source.column());
      int row = (int) Math.round(source.row());
      for (int y = Math.max(0, row - 2); y <= Math.min(plane.height() - 1, row + 2); y++) {
        for (int x = Math.max(0, column - 2); x <= Math.min(plane.width() - 1, column + 2); x++) {
          double value = Math.abs(plane.at(x, y));
          reach = Double.isFinite(value) ? Math.max(reach, value) : reach;
        }
      }
    }
    return ColourScale.aroundZero(reach, unit);
  }

  /** The whole picture. */
  Sketch whole() {
    PlaneView view = PlaneView.whole(plane, colours(), MAX_WIDTH, MAX_HEIGHT);
    Rectangle2D area = view.area();
    Labels labels =
        new Labels(area.getX() + 4, area.getY() + 4, area.getWidth() - 8, area.getHeight() - 8);
    labels.keepFree(area.getX(), area.getMaxY() - 44, 180, 44);
    drawParts(view);
    for (HeatSource source : sources) {
      double ring = ring(view, source);
      labels.keepFree(
          view.x(source.column()) - ring, view.y(source.row()) - ring, 2 * ring, 2 * ring);
      circle(view, source, ring);
    }
    for (int i = 0; i < sources.size(); i++) {
      HeatSource source = sources.get(i);
      double ring = ring(view, source);
      Rectangle2D thing =
          new Rectangle2D.Double(
              view.x(source.column()) - ring, view.y(source.row()) - ring, 2 * ring, 2 * ring);
      label(
          view,
          labels,
          area.createIntersection(thing),
          texts.get("source.label", Integer.toString(i + 1)));
    }
    labelClips(view, labels);
    for (PartMark part : nearestParts(view)) {
      label(view, labels, bounds(view, part), part.reference());
    }
    view.scaleBar(placement.millimetresPerPixel());
    return view.sketch();
  }

  /** One source enlarged, with the ellipse that holds its place with 95 % probability. */
  Sketch close(int sourceIndex) {
    HeatSource source = sources.get(sourceIndex);
    double[] axes = ellipse(source);
    int half = (int) Math.ceil(Math.max(12, Math.max(3 * source.widthPixels(), 1.6 * axes[0])));
    int left = (int) Math.round(source.column()) - half;
    int top = (int) Math.round(source.row()) - half;
    PlaneView view =
        PlaneView.part(plane, colours(), left, top, 2 * half + 1, 2 * half + 1, 560, 560);
    Rectangle2D area = view.area();
    drawParts(view);
    for (Pen pen : List.of(CASING, CORE)) {
      view.sketch()
          .add(
              new Shape.Ellipse(
                  view.x(source.column()),
                  view.y(source.row()),
                  Math.max(2, axes[0] * view.scale()),
                  Math.max(2, axes[1] * view.scale()),
                  axes[2],
                  pen));
    }
    Labels labels =
        new Labels(area.getX() + 4, area.getY() + 4, area.getWidth() - 8, area.getHeight() - 8);
    labels.keepFree(area.getX(), area.getMaxY() - 44, 180, 44);
    double free = Math.max(6, axes[0] * view.scale() + 4);
    labels.keepFree(
        view.x(source.column()) - free, view.y(source.row()) - free, 2 * free, 2 * free);
    labelClips(view, labels);
    for (PartMark part : placement.parts()) {
      if (view.shows(part.column(), part.row())) {
        label(view, labels, bounds(view, part), part.reference());
      }
    }
    view.scaleBar(placement.millimetresPerPixel());
    return view.sketch();
  }

  private static double ring(PlaneView view, HeatSource source) {
    return Math.max(16, (2.5 * source.widthPixels() + 2) * view.scale());
  }

  private static void circle(PlaneView view, HeatSource source, double radius) {
    double x = view.x(source.column());
    double y = view.y(source.row());
    if (view.area().contains(x - radius, y - radius, 2 * radius, 2 * radius)) {
      for (Pen pen : List.of(CASING, CORE)) {
        view.sketch().add(new Shape.Ellipse(x, y, radius, radius, 0, pen));
      }
      return;
    }
    double[] columns = new double[RING_CORNERS];
    double[] rows = new double[RING_CORNERS];
    for (int i = 0; i < RING_CORNERS; i++) {
      double angle = 2 * Math.PI * i / RING_CORNERS;
      columns[i] = source.column() + radius / view.scale() * Math.cos(angle);
      rows[i] = source.row() + radius / view.scale() * Math.sin(angle);
    }
    view.outline(columns, rows, CASING, CORE);
  }

  /** Half axes in pixels, larger first, and the tilt of the larger in degrees, clockwise. */
  static double[] ellipse(HeatSource source) {
    double mean = (source.columnVariance() + source.rowVariance()) / 2;
    double apart =
        Math.hypot((source.columnVariance() - source.rowVariance()) / 2, source.covariance());
    double tilt =
        Math.toDegrees(
                Math.atan2(2 * source.covariance(), source.columnVariance() - source.rowVariance()))
            / 2;
    return new double[] {
      SQRT_CHI2_95_2 * Math.sqrt(Math.max(0, mean + apart)),
      SQRT_CHI2_95_2 * Math.sqrt(Math.max(0, mean - apart)),
      tilt
    };
  }

  private void drawParts(PlaneView view) {
    Set<String> named = new LinkedHashSet<>();
    suspects.forEach(suspect -> named.add(suspect.part()));
    for (PartMark part : placement.parts()) {
      if (named.contains(part.reference())) {
        view.outline(part.columns(), part.rows(), CASING, CORE);
      } else if (part.onRail()) {
        view.outline(part.columns(), part.rows(), Pen.line(Sketch.INK, 1.5));
      } else {
        view.outline(part.columns(), part.rows(), FAINT);
      }
    }
    for (PartMark clip : placement.clips()) {
      view.outline(clip.columns(), clip.rows(), HELD.toArray(Pen[]::new));
    }
  }

  private void labelClips(PlaneView view, Labels labels) {
    for (PartMark clip : placement.clips()) {
      if (view.shows(clip.column(), clip.row())) {
        label(view, labels, bounds(view, clip), texts.get("clip.label"));
      }
    }
  }

  /** Suspects first, then the parts nearest to any source. */
  private List<PartMark> nearestParts(PlaneView view) {
    List<String> order = suspects.stream().map(Suspect::part).toList();
    List<PartMark> visible = new ArrayList<>();
    for (PartMark part : placement.parts()) {
      if (view.shows(part.column(), part.row()) && !sources.isEmpty()) {
        visible.add(part);
      }
    }
    visible.sort(
        Comparator.comparingInt((PartMark part) -> place(order, part.reference()))
            .thenComparingDouble(this::distanceToSource));
    return visible.subList(0, Math.min(MOST_LABELS, visible.size()));
  }

  private static int place(List<String> order, String reference) {
    int place = order.indexOf(reference);
    return place < 0 ? Integer.MAX_VALUE : place;
  }

  private double distanceToSource(PartMark part) {
    return sources.stream()
        .mapToDouble(source -> part.distance(source.column(), source.row()))
        .min()
        .orElse(0);
  }

  /** The part of an outline's bounds that is in the picture. */
  private static Rectangle2D bounds(PlaneView view, PartMark part) {
    Rectangle2D bounds = null;
    for (int i = 0; i < part.columns().length; i++) {
      Rectangle2D corner =
          new Rectangle2D.Double(view.x(part.columns()[i]), view.y(part.rows()[i]), 0, 0);
      bounds = bounds == null ? corner : bounds.createUnion(corner);
    }
    return view.area().createIntersection(bounds);
  }

  private static void label(PlaneView view, Labels labels, Rectangle2D thing, String text) {
    double width = Sketch.textWidth(text, LABEL, true);
    labels
        .place(thing, 260, width, LABEL * 1.1)
        .ifPresent(
            placed -> {
              Line2D line = placed.leader();
              if (line.getP1().distance(line.getP2()) > 7) {
                for (Pen pen : List.of(CASING, CORE)) {
                  view.sketch().line(line.getX1(), line.getY1(), line.getX2(), line.getY2(), pen);
                }
              }
              view.sketch()
                  .label(
                      placed.box().getCenterX(),
                      placed.box().getMaxY() - LABEL * 0.22,
                      text,
                      LABEL,
                      Shape.Anchor.MIDDLE);
            });
  }
}
