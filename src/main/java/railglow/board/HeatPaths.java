package railglow.board;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import railglow.board.geometry.BoardPosition;
import railglow.board.geometry.Outline;
import railglow.thermal.HeatShape;
import railglow.thermal.HeatSource;

/**
 * Tells heat of the way from heat of the fault: what sits at a clip is its contact; what is clearly
 * long and lies on no part is a trace. Pure.
 */
final class HeatPaths {
  /** A jaw and the solder it warms reach beyond the pad it holds; common practice, no source. */
  private static final double JAW_MILLIMETRES = 1;

  /** Parts, and two of them side by side, look less long than this beside their width. */
  private static final double LONG = 1.8;

  private static final double SURE_SIGMAS = 3;
  private static final double LEAST_LENGTH_MILLIMETRES = 4;

  /** A trace begins and ends at parts; along the most of its way there are none. */
  private static final double MOST_ON_PARTS = 0.34;

  private static final int PLACES_ALONG = 9;

  /** So far beside a large part of the rail heat from under it may come out, along its edge. */
  private static final double BESIDE_MILLIMETRES = 2;

  /** A part of the rail this near to an end is named as where it leads. */
  private static final double END_MILLIMETRES = 8;

  private HeatPaths() {}

  /**
   * @param board with a registration
   * @param shapes in the sources' order, as far as they were measured
   * @return in the sources' order; none leads yet
   */
  static List<HeatPath> of(
      Board board, String railName, List<HeatSource> sources, List<HeatShape> shapes) {
    List<HeatPath> paths = new ArrayList<>();
    for (int i = 0; i < sources.size(); i++) {
      Optional<HeatPath> path = clip(board, sources.get(i), i);
      if (path.isEmpty() && i < shapes.size()) {
        path = trace(board, railName, sources.get(i), shapes.get(i), i);
      }
      path.ifPresent(paths::add);
    }
    return paths;
  }

  private static Optional<HeatPath> clip(Board board, HeatSource source, int index) {
    BoardPosition at =
        SuspectRanking.position(board, source)
            .withAdded(SuspectRanking.PLACEMENT_SIGMA_MILLIMETRES);
    return board.care().clips().stream()
        .filter(
            clip ->
                clip.outline().distanceMillimetres(at.xMillimetres(), at.yMillimetres())
                        <= JAW_MILLIMETRES
                    || clip.outline().distanceSigmas(at) <= SuspectRanking.TOUCH_SIGMAS)
        .findFirst()
        .map(
            clip ->
                new HeatPath(
                    index,
                    HeatPath.Kind.CLIP,
                    false,
                    "where the clip on " + clip.name() + " sits",
                    "the clip on "
                        + clip.name()
                        + " sits there: most likely its contact, which takes the whole current"));
  }

  private static Optional<HeatPath> trace(
      Board board, String railName, HeatSource source, HeatShape shape, int index) {
    if (!(shape.ratio() - SURE_SIGMAS * shape.ratioSigma() > LONG)) {
      return Optional.empty();
    }
    // A line that spreads evenly is as wide everywhere; what is left is its own length.
    double pixels =
        Math.sqrt(12 * (Math.pow(shape.longPixels(), 2) - Math.pow(shape.shortPixels(), 2)));
    BoardPosition[] along = new BoardPosition[PLACES_ALONG];
    for (int k = 0; k < PLACES_ALONG; k++) {
      double step = pixels * (k / (PLACES_ALONG - 1.0) - 0.5);
      along[k] =
          board
              .registration()
              .orElseThrow()
              .toBoard(
                  shape.column() + step * shape.alongColumn(),
                  shape.row() + step * shape.alongRow());
    }
    BoardPosition first = along[0];
    BoardPosition last = along[PLACES_ALONG - 1];
    double length =
        Math.hypot(
            last.xMillimetres() - first.xMillimetres(), last.yMillimetres() - first.yMillimetres());
    BoardPosition at = SuspectRanking.position(board, source);
    if (length < LEAST_LENGTH_MILLIMETRES
        || distance(first, last, at) > width(board, shape)
        || onParts(board, at) > 0
        || isBesideLargePart(board, railName, at)
        || onParts(board, along) > MOST_ON_PARTS) {
      return Optional.empty();
    }
    return Optional.of(
        new HeatPath(
            index,
            HeatPath.Kind.TRACE,
            false,
            String.format(
                Locale.ROOT,
                "along %.0f mm, from (%.0f, %.0f) mm to (%.0f, %.0f) mm",
                length,
                first.xMillimetres(),
                first.yMillimetres(),
                last.xMillimetres(),
                last.yMillimetres()),
            String.format(
                Locale.ROOT,
                "the heat is %.1f times as long as wide and lies on no part%s: most likely a"
                    + " trace or vias that carry the current",
                shape.ratio(),
                ends(board, railName, first, last))));
  }

  /** Half its width; a source farther from the line than that belongs to something else. */
  private static double width(Board board, HeatShape shape) {
    BoardPosition middle = board.registration().orElseThrow().toBoard(shape.column(), shape.row());
    BoardPosition side =
        board
            .registration()
            .orElseThrow()
            .toBoard(
                shape.column() - shape.shortPixels() * shape.alongRow(),
                shape.row() + shape.shortPixels() * shape.alongColumn());
    return Math.hypot(
        side.xMillimetres() - middle.xMillimetres(), side.yMillimetres() - middle.yMillimetres());
  }

  /** From a place to the way between two others. */
  private static double distance(BoardPosition from, BoardPosition to, BoardPosition at) {
    double dx = to.xMillimetres() - from.xMillimetres();
    double dy = to.yMillimetres() - from.yMillimetres();
    double x = at.xMillimetres() - from.xMillimetres();
    double y = at.yMillimetres() - from.yMillimetres();
    double share = Math.max(0, Math.min(1, (x * dx + y * dy) / (dx * dx + dy * dy)));
    return Math.hypot(x - share * dx, y - share * dy);
  }

  private static double onParts(Board board, BoardPosition... places) {
    int on = 0;
    for (BoardPosition place : places) {
      if (board.parts().stream()
          .map(Board::outline)
          .anyMatch(outline -> outline.contains(place.xMillimetres(), place.yMillimetres()))) {
        on++;
      }
    }
    return on / (double) places.length;
  }

  private static boolean isBesideLargePart(Board board, String railName, BoardPosition at) {
    return board.partsOn(railName).stream()
        .anyMatch(part -> Candidate.isLarge(part) && distance(part, at) <= BESIDE_MILLIMETRES);
  }

  /** ", between C38 and U8 of 3V3", or nothing. */
  private static String ends(
      Board board, String railName, BoardPosition first, BoardPosition last) {
    Optional<Part> one = nearest(board, railName, first);
    Optional<Part> other = nearest(board, railName, last);
    if (one.isEmpty() || other.isEmpty() || one.equals(other)) {
      return "";
    }
    return ", between "
        + one.get().reference()
        + " and "
        + other.get().reference()
        + " of "
        + railName;
  }

  private static Optional<Part> nearest(Board board, String railName, BoardPosition at) {
    return board.partsOn(railName).stream()
        .filter(part -> distance(part, at) <= END_MILLIMETRES)
        .min(
            Comparator.<Part>comparingDouble(part -> distance(part, at))
                .thenComparing(Part::reference));
  }

  private static double distance(Part part, BoardPosition at) {
    Outline outline = Board.outline(part);
    return outline.distanceMillimetres(at.xMillimetres(), at.yMillimetres());
  }
}
