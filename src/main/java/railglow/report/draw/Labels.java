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
  private static final double GAP = 3;

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
   * Finds the nearest free place round a thing.
   *
   * @param x of the thing's middle
   * @param nearest how far from there the label's edge must stay
   * @param farthest how far it may go
   * @return empty when there is no room
   */
  public Optional<Placed> place(
      double x, double y, double nearest, double farthest, double width, double height) {
    for (double distance = nearest; distance <= farthest; distance += height / 2) {
      for (int k = 0; k < DIRECTIONS; k++) {
        // up and to the right first, then alternating to both sides
        int turn = k % 2 == 0 ? k / 2 : -(k + 1) / 2;
        double angle = -Math.PI / 4 + turn * 2 * Math.PI / DIRECTIONS;
        double centreX = x + Math.cos(angle) * (distance + width / 2);
        double centreY = y + Math.sin(angle) * (distance + height / 2);
        Rectangle2D box =
            new Rectangle2D.Double(centreX - width / 2, centreY - height / 2, width, height);
        Line2D leader = leader(box, x, y);
        if (isFree(box, leader)) {
          labels.add(box);
          leaders.add(leader);
          return Optional.of(new Placed(box, leader));
        }
      }
    }
    return Optional.empty();
  }

  private boolean isFree(Rectangle2D box, Line2D leader) {
    if (!bounds.contains(box)) {
      return false;
    }
    Rectangle2D wide =
        new Rectangle2D.Double(
            box.getX() - GAP,
            box.getY() - GAP,
            box.getWidth() + 2 * GAP,
            box.getHeight() + 2 * GAP);
    if (keptFree.stream().anyMatch(wide::intersects)
        || labels.stream().anyMatch(wide::intersects)
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

  private static Line2D leader(Rectangle2D box, double x, double y) {
    double fromX = Math.max(box.getMinX(), Math.min(box.getMaxX(), x));
    double fromY = Math.max(box.getMinY(), Math.min(box.getMaxY(), y));
    return new Line2D.Double(fromX, fromY, x, y);
  }
}
