package railglow.report.draw;

import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Places labels beside what they name so that no two overlap and none leaves the picture. Greedy:
 * the first gets the best place. Not thread-safe.
 */
public final class Labels {
  private static final int DIRECTIONS = 24;
  private static final double GAP = 4;
  private static final double MARGIN = 3;

  private final Rectangle2D bounds;
  private final List<Rectangle2D> keptFree = new ArrayList<>();
  private final List<Rectangle2D> labels = new ArrayList<>();
  private final List<Line2D> leaders = new ArrayList<>();

  public Labels(double x, double y, double width, double height) {
    bounds = new Rectangle2D.Double(x, y, width, height);
  }

  /**
   * A label that has found its place.
   *
   * @param box it fills
   * @param leader from the box to the thing it names
   */
  public record Placed(Rectangle2D box, Line2D leader) {}

  /** Keeps an area free of labels. */
  public void keepFree(double x, double y, double width, double height) {
    keptFree.add(new Rectangle2D.Double(x, y, width, height));
  }

  /**
   * Finds the nearest free place beside a thing: right above it first, then round it, then farther.
   *
   * @param thing its bounds
   * @param farthest how far from its bounds the label may go
   * @return empty when there is no room
   */
  public Optional<Placed> place(Rectangle2D thing, double farthest, double width, double height) {
    for (double distance = GAP; distance <= farthest; distance += height / 2) {
      for (int k = 0; k < DIRECTIONS; k++) {
        int turn = k % 2 == 0 ? k / 2 : -(k + 1) / 2;
        double angle = -Math.PI / 2 + turn * 2 * Math.PI / DIRECTIONS;
        double centreX =
            thing.getCenterX()
                + stretched(angle, true) * (distance + (thing.getWidth() + width) / 2);
        double centreY =
            thing.getCenterY()
                + stretched(angle, false) * (distance + (thing.getHeight() + height) / 2);
        Rectangle2D box =
            new Rectangle2D.Double(centreX - width / 2, centreY - height / 2, width, height);
        Line2D leader = leader(box, thing);
        if (isFree(box, leader, thing)) {
          labels.add(box);
          leaders.add(leader);
          return Optional.of(new Placed(box, leader));
        }
      }
    }
    return Optional.empty();
  }

  /**
   * Directions round a square instead of a circle, so that a label touches a side, not a corner.
   */
  private static double stretched(double angle, boolean horizontal) {
    double x = Math.cos(angle);
    double y = Math.sin(angle);
    return (horizontal ? x : y) / Math.max(Math.abs(x), Math.abs(y));
  }

  private boolean isFree(Rectangle2D box, Line2D leader, Rectangle2D thing) {
    if (!bounds.contains(box)) {
      return false;
    }
    Rectangle2D wide =
        new Rectangle2D.Double(
            box.getX() - MARGIN,
            box.getY() - MARGIN,
            box.getWidth() + 2 * MARGIN,
            box.getHeight() + 2 * MARGIN);
    if (keptFree.stream().anyMatch(wide::intersects)
        || labels.stream().anyMatch(wide::intersects)
        || keptFree.stream().anyMatch(o -> !o.intersects(thing) && o.intersectsLine(leader))
        || labels.stream().anyMatch(other -> other.intersectsLine(leader))) {
      return false;
    }
    for (Line2D other : leaders) {
      if (wide.intersectsLine(other) || other.intersectsLine(leader)) {
        return false;
      }
    }
    return true;
  }

  /** The shortest line between the two. */
  private static Line2D leader(Rectangle2D box, Rectangle2D thing) {
    double[] xs = nearest(box.getMinX(), box.getMaxX(), thing.getMinX(), thing.getMaxX());
    double[] ys = nearest(box.getMinY(), box.getMaxY(), thing.getMinY(), thing.getMaxY());
    return new Line2D.Double(xs[0], ys[0], xs[1], ys[1]);
  }

  private static double[] nearest(double low, double high, double thingLow, double thingHigh) {
    if (high < thingLow) {
      return new double[] {high, thingLow};
    }
    if (thingHigh < low) {
      return new double[] {low, thingHigh};
    }
    double middle = (Math.max(low, thingLow) + Math.min(high, thingHigh)) / 2;
    return new double[] {middle, middle};
  }
}
