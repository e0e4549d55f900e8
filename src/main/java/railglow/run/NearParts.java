package railglow.run;

import java.util.Comparator;
import java.util.List;
import railglow.board.Board;
import railglow.board.Part;
import railglow.board.geometry.BoardPosition;

/** The parts around a place on the side of a board that is looked at. Stateless. */
final class NearParts {
  private NearParts() {}

  /** All on that side, by their distance and then by name. */
  static List<Part> nearestFirst(Board board, BoardPosition at) {
    return board.parts().stream()
        .filter(part -> part.side() == board.viewed())
        .sorted(
            Comparator.<Part>comparingDouble(part -> distance(part, at))
                .thenComparing(Part::reference))
        .toList();
  }

  /** From a place to a part's outline, mm; 0 inside. */
  static double distance(Part part, BoardPosition at) {
    return Board.outline(part).distanceMillimetres(at.xMillimetres(), at.yMillimetres());
  }
}
