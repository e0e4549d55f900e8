package railglow.board.places;

import java.util.List;

/**
 * A named point, line or area whose temperature is followed. Immutable.
 *
 * @param xs columns in pixels, or x in millimetres: of the point, of the line's two ends, or of the
 *     area's corners in order
 * @param ys rows in pixels, or y in millimetres; as many
 */
public record Place(String name, Shape shape, Space space, List<Double> xs, List<Double> ys) {
  /** What it is. */
  public enum Shape {
    POINT,
    LINE,
    AREA
  }

  /** What its numbers are. */
  public enum Space {
    /** Columns and rows of the thermal picture, the first pixel's middle at 0, 0. */
    PICTURE,
    /** Millimetres on the board. */
    BOARD
  }

  public Place {
    xs = List.copyOf(xs);
    ys = List.copyOf(ys);
    int least = shape == Shape.POINT ? 1 : shape == Shape.LINE ? 2 : 3;
    if (xs.size() != ys.size() || xs.size() < least || shape != Shape.AREA && xs.size() > least) {
      throw new IllegalArgumentException(
          "a " + shape + " of " + xs.size() + " x and " + ys.size() + " y can't be");
    }
    if (name.isBlank()) {
      throw new IllegalArgumentException("a place needs a name");
    }
  }
}
