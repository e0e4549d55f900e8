package railglow.board.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.awt.geom.Area;
import java.awt.geom.Path2D;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The invented boards could be made. */
class ExampleBoardTest {
  static List<ExampleBoard> boards() {
    return ExampleBoard.ALL;
  }

  @ParameterizedTest
  @MethodSource("boards")
  void noTwoPartsOverlapAndNoneLeavesTheBoard(ExampleBoard board) {
    List<String> problems = new ArrayList<>();
    for (int i = 0; i < board.parts().size(); i++) {
      ExamplePart part = board.parts().get(i);
      Area own = area(part);
      var bounds = own.getBounds2D();
      if (bounds.getMinX() < 0
          || bounds.getMinY() < 0
          || bounds.getMaxX() > board.width()
          || bounds.getMaxY() > board.height()) {
        problems.add(part.reference() + " leaves the board: " + bounds);
      }
      for (double[] hole : board.holes()) {
        if (part.outline().distanceMillimetres(hole[0], hole[1]) < 3.0) {
          problems.add(part.reference() + " covers the hole at " + hole[0] + ", " + hole[1]);
        }
      }
      for (ExamplePart other : board.parts().subList(i + 1, board.parts().size())) {
        Area common = area(other);
        common.intersect(own);
        if (other.side() == part.side() && !common.isEmpty()) {
          problems.add(part.reference() + " and " + other.reference() + " overlap");
        }
      }
    }
    assertEquals(List.of(), problems);
  }

  private static Area area(ExamplePart part) {
    double[] corners = part.outline().corners();
    Path2D path = new Path2D.Double();
    path.moveTo(corners[0], corners[1]);
    for (int i = 2; i < 8; i += 2) {
      path.lineTo(corners[i], corners[i + 1]);
    }
    path.closePath();
    return new Area(path);
  }
}
