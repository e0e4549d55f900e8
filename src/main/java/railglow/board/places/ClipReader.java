package railglow.board.places;

import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import railglow.board.Board;
import railglow.board.Clip;
import railglow.board.Part;
import railglow.board.geometry.BoardPosition;
import railglow.board.geometry.Outline;
import railglow.board.imports.Pad;

/**
 * Reads where a clip sits, as it is typed: {@code C9} (somewhere on a part), {@code J7.3} (on a pin
 * of it), {@code point 12 mm, 40 mm} or {@code point 150 px, 90 px}. Pure.
 */
public final class ClipReader {
  /** What a jaw covers; common practice, no source. */
  private static final double JAW_MILLIMETRES = 2;

  private static final Pattern PIN = Pattern.compile("([A-Za-z]+[0-9]+)[.:]([A-Za-z0-9]+)");

  private ClipReader() {}

  /**
   * @throws IllegalArgumentException with one sentence that says what is wrong and what is right
   */
  public static Clip parse(String text, Board board) {
    String given = text.strip();
    if (board.registration().isEmpty()) {
      throw refused(
          given,
          "where a clip shows in the picture is known only with a registration in the board file");
    }
    if (given.contains(" ")) {
      return point(given, board);
    }
    Matcher pin = PIN.matcher(given);
    return pin.matches() ? pin(given, pin.group(1), pin.group(2), board) : part(given, board);
  }

  private static Clip part(String reference, Board board) {
    Part part = known(reference, reference, board);
    return new Clip(reference, Board.outline(part));
  }

  private static Part known(String given, String reference, Board board) {
    return board
        .part(reference)
        .orElseThrow(
            () ->
                refused(
                    given,
                    reference
                        + " is no part of the board; give a part, a pin such as 'J7.3', or 'point 12"
                        + " mm, 40 mm'"));
  }

  private static Clip pin(String given, String reference, String pin, Board board) {
    known(given, reference, board);
    List<Pad> pads =
        board.netlist().map(list -> list.pads()).orElse(List.of()).stream()
            .filter(pad -> pad.reference().equals(reference))
            .toList();
    Pad pad =
        pads.stream()
            .filter(one -> one.pin().equalsIgnoreCase(pin))
            .findFirst()
            .orElseThrow(
                () ->
                    refused(
                        given,
                        reference
                            + (pads.isEmpty()
                                ? " has no pins in a netlist; give the part alone"
                                : " has no pin "
                                    + pin
                                    + "; it has "
                                    + pads.stream()
                                        .map(Pad::pin)
                                        .distinct()
                                        .collect(Collectors.joining(", ")))));
    return new Clip(
        reference + " pin " + pad.pin(),
        new Outline(
            pad.xMillimetres(),
            pad.yMillimetres(),
            Math.max(JAW_MILLIMETRES, pad.widthMillimetres()),
            Math.max(JAW_MILLIMETRES, pad.heightMillimetres()),
            pad.rotationDegrees()));
  }

  private static Clip point(String given, Board board) {
    Place place = PlaceReader.parse(given, board);
    if (place.shape() != Place.Shape.POINT) {
      throw refused(given, "a clip sits at a point, such as 'point 12 mm, 40 mm'");
    }
    double x = place.xs().get(0);
    double y = place.ys().get(0);
    if (place.space() == Place.Space.PICTURE) {
      BoardPosition at = board.registration().orElseThrow().toBoard(x, y);
      x = at.xMillimetres();
      y = at.yMillimetres();
    }
    if (!(x >= 0 && y >= 0 && x <= board.widthMillimetres() && y <= board.heightMillimetres())) {
      throw refused(
          given,
          String.format(
              Locale.ROOT,
              "(%.1f, %.1f) mm is beside the board; allowed is 0 to %.0f mm across and 0 to %.0f mm"
                  + " up",
              x,
              y,
              board.widthMillimetres(),
              board.heightMillimetres()));
    }
    return new Clip(place.name(), new Outline(x, y, JAW_MILLIMETRES, JAW_MILLIMETRES, 0));
  }

  private static IllegalArgumentException refused(String given, String why) {
    return new IllegalArgumentException("clip '" + given + "': " + why);
  }
}
