package railglow.board.places;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import railglow.board.Board;
import railglow.board.Part;
import railglow.units.Quantity;
import railglow.units.QuantityException;
import railglow.units.Unit;

/**
 * Reads places as they are typed: {@code C37} (a part of the board), {@code tail=point 30 mm, 12
 * mm}, {@code trace=line 10 px, 4 px, 90 px, 4 px}, {@code regulator=area 20 mm, 10 mm, 34 mm, 22
 * mm} (two opposite corners). Numbers in millimetres are on the board, numbers in pixels are
 * columns and rows of the picture. Pure.
 */
public final class PlaceReader {
  private static final Pattern FORM =
      Pattern.compile("(?:([^=]+)=)?\\s*(point|line|area)\\s+(.*)", Pattern.CASE_INSENSITIVE);
  private static final double PIXEL_MARGIN = 0.499;
  private static final int LONGEST_NAME = 40;

  private PlaceReader() {}

  /**
   * @param board for parts; null when none was given
   * @throws IllegalArgumentException with one sentence that says what is wrong and what is right
   */
  public static Place parse(String text, Board board) {
    String given = text.strip();
    Matcher matcher = FORM.matcher(given);
    if (!matcher.matches()) {
      return part(given, board);
    }
    Place.Shape shape = Place.Shape.valueOf(matcher.group(2).toUpperCase(Locale.ROOT));
    String name = matcher.group(1) == null ? given : matcher.group(1).strip();
    if (name.isEmpty() || name.length() > LONGEST_NAME) {
      throw new IllegalArgumentException(
          "place '" + given + "': its name must have 1 to " + LONGEST_NAME + " characters");
    }
    String[] numbers = matcher.group(3).split(",", -1);
    int wanted = shape == Place.Shape.POINT ? 2 : 4;
    if (numbers.length != wanted) {
      throw new IllegalArgumentException(
          String.format(
              "place '%s': a %s needs %d numbers with their unit, such as '%s', not %d",
              given,
              matcher.group(2).toLowerCase(Locale.ROOT),
              wanted,
              wanted == 2 ? "point 30 mm, 12 mm" : "area 20 px, 10 px, 34 px, 22 px",
              numbers.length));
    }
    boolean onBoard = numbers[0].strip().endsWith("m");
    List<Double> xs = new ArrayList<>();
    List<Double> ys = new ArrayList<>();
    for (int i = 0; i < numbers.length; i++) {
      (i % 2 == 0 ? xs : ys).add(number(given, numbers[i], onBoard));
    }
    return new Place(
        name,
        shape,
        onBoard ? Place.Space.BOARD : Place.Space.PICTURE,
        shape == Place.Shape.AREA ? corners(xs, onBoard, true) : xs,
        shape == Place.Shape.AREA ? corners(ys, onBoard, false) : ys);
  }

  private static double number(String place, String text, boolean onBoard) {
    try {
      return onBoard ? 1e3 * Quantity.parse(text, Unit.METRE) : Quantity.parse(text, Unit.PIXEL);
    } catch (QuantityException e) {
      throw new IllegalArgumentException(
          "place '"
              + place
              + "': "
              + e.getMessage()
              + "; all numbers of a place are in mm (on the board) or all in px (in the picture)",
          e);
    }
  }

  /** In the picture both named pixels belong to the area. */
  private static List<Double> corners(List<Double> ends, boolean onBoard, boolean columns) {
    double margin = onBoard ? 0 : PIXEL_MARGIN;
    double from = Math.min(ends.get(0), ends.get(1)) - margin;
    double to = Math.max(ends.get(0), ends.get(1)) + margin;
    return columns ? List.of(from, to, to, from) : List.of(from, from, to, to);
  }

  /** A part by its reference: the area of its outline. */
  private static Place part(String reference, Board board) {
    Optional<Part> part =
        board == null
            ? Optional.empty()
            : board.parts().stream()
                .filter(p -> p.reference().equalsIgnoreCase(reference))
                .findFirst();
    if (part.isEmpty()) {
      throw new IllegalArgumentException(
          "place '"
              + reference
              + "' is "
              + (board == null ? "no part, since no board file was given" : "no part of the board")
              + "; else write 'NAME=point X, Y', 'NAME=line X, Y, X, Y' or 'NAME=area X, Y, X, Y' in"
              + " px or mm");
    }
    if (part.get().side() != board.viewed()) {
      throw new IllegalArgumentException(
          "place '" + reference + "' is on the side of the board that the camera does not see");
    }
    double[] corners = Board.outline(part.get()).corners();
    List<Double> xs = new ArrayList<>();
    List<Double> ys = new ArrayList<>();
    for (int i = 0; i < corners.length; i += 2) {
      xs.add(corners[i]);
      ys.add(corners[i + 1]);
    }
    return new Place(part.get().reference(), Place.Shape.AREA, Place.Space.BOARD, xs, ys);
  }
}
