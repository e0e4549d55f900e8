package railglow.run;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import railglow.board.Board;
import railglow.board.geometry.BoardPosition;
import railglow.config.BoardFile;

class PowerScaleTest {
  @ParameterizedTest
  @CsvSource({
    "0, 2, 0.11",
    "0, 1.9, 0.50",
    "2, 5, 0.11",
    "3.5, 2, 0.11",
    "4, 20, 0.50",
    "14, Infinity, 0.50"
  })
  void wattsAreKnownWellWhereASmallPartStandsByItself(double own, double clear, double error) {
    assertEquals(error, PowerScale.relativeError(own, clear));
  }

  @Test
  void onABoardTheNearestPartIsThePlacesOwnAndTheOthersAreInItsWay() throws Exception {
    Board board = BoardFile.read(Path.of("docs/examples/hx12/board.yaml")).board();
    // C37, a small capacitor by itself; U6, a large chip; beside U6.
    assertEquals(0.11, PowerScale.relativeError(board, new BoardPosition(78, 31, 0, 0, 0)));
    assertEquals(0.50, PowerScale.relativeError(board, new BoardPosition(58, 30, 0, 0, 0)));
    assertEquals(0.50, PowerScale.relativeError(board, new BoardPosition(66, 30, 0, 0, 0)));
  }
}
