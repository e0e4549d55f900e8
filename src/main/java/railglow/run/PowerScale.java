package railglow.run;

import java.util.List;
import railglow.board.Board;
import railglow.board.Part;
import railglow.board.geometry.BoardPosition;
import railglow.board.geometry.Outline;

/**
 * How far watts seen at a place may be off, beside what pixel noise leaves open: the map takes the
 * board for a plate, and larger parts are none. They take heat from their surroundings and hide
 * them. Stateless.
 */
public final class PowerScale {
  /**
   * Standard deviation, relative, where a small part stands by itself: 95 % of such leaks on either
   * side of simulated boards are within twice that (measured, docs/detection.md). That the board
   * file states the plate makes it no smaller.
   */
  public static final double CLEAR = 0.11;

  /** Of leaks on, under or beside other parts about nine in ten are within twice this. */
  public static final double BESIDE_OTHERS = 0.50;

  private static final double CLEAR_MILLIMETRES = 2;
  private static final double SMALL_MILLIMETRES = 3.5;

  /** A part as near as this to a place is the one that the place lies on. */
  private static final double OWN_MILLIMETRES = 0.5;

  private PowerScale() {}

  /**
   * Relative standard deviation.
   *
   * @param ownMillimetres longer side of the part that the place lies on; 0 on none
   * @param clearMillimetres from the place to the outline of the nearest other part
   */
  public static double relativeError(double ownMillimetres, double clearMillimetres) {
    return ownMillimetres <= SMALL_MILLIMETRES && clearMillimetres >= CLEAR_MILLIMETRES
        ? CLEAR
        : BESIDE_OTHERS;
  }

  /** The same of a place on a board, by the parts on the side that is looked at. */
  static double relativeError(Board board, BoardPosition at) {
    List<Part> nearestFirst = NearParts.nearestFirst(board, at);
    boolean isOnPart =
        !nearestFirst.isEmpty() && NearParts.distance(nearestFirst.get(0), at) < OWN_MILLIMETRES;
    double longer = 0;
    if (isOnPart) {
      Outline own = Board.outline(nearestFirst.get(0));
      longer = Math.max(own.widthMillimetres(), own.heightMillimetres());
    }
    double clear =
        nearestFirst.stream()
            .skip(isOnPart ? 1 : 0)
            .findFirst()
            .map(other -> NearParts.distance(other, at))
            .orElse(Double.POSITIVE_INFINITY);
    return relativeError(longer, clear);
  }
}
