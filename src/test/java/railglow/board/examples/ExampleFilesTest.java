package railglow.board.examples;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The files below docs/examples are what the plans in the test resources make. After a change of a
 * plan: {@code mvn test -Dtest=ExampleFilesTest -Dremake-examples=true}.
 */
class ExampleFilesTest {
  private static final int LAYERS = 4;

  @BeforeAll
  static void remakeWhenAsked() throws IOException {
    if (!Boolean.getBoolean("remake-examples")) {
      return;
    }
    for (ExampleBoard board : ExampleBoard.ALL) {
      Files.createDirectories(folder(board));
      Files.write(folder(board).resolve("placement.csv"), PlacementWriter.bytes(board));
      Files.writeString(folder(board).resolve("netlist.ipc"), NetlistWriter.netlist(board, LAYERS));
      ImageIO.write(BoardDrawing.of(board), "png", folder(board).resolve("board.png").toFile());
    }
  }

  static java.util.List<ExampleBoard> boards() {
    return ExampleBoard.ALL;
  }

  private static Path folder(ExampleBoard board) {
    return Path.of("docs/examples").resolve(board.folder());
  }

  @ParameterizedTest
  @MethodSource("boards")
  void thePlacementIsWhatThePlanMakes(ExampleBoard board) throws IOException {
    assertArrayEquals(
        PlacementWriter.bytes(board), Files.readAllBytes(folder(board).resolve("placement.csv")));
  }

  @ParameterizedTest
  @MethodSource("boards")
  void theNetlistIsWhatThePlanMakes(ExampleBoard board) throws IOException {
    assertEquals(
        NetlistWriter.netlist(board, LAYERS),
        Files.readString(folder(board).resolve("netlist.ipc"), StandardCharsets.US_ASCII));
  }

  /** Letters differ from machine to machine, so only the picture's size is held. */
  @ParameterizedTest
  @MethodSource("boards")
  void thePictureHasTheScaleTheBoardFileStates(ExampleBoard board) throws IOException {
    var picture = ImageIO.read(folder(board).resolve("board.png").toFile());
    int scale = BoardDrawing.PIXELS_PER_MILLIMETRE;
    assertEquals(board.width() * scale + 2 * BoardDrawing.MARGIN, picture.getWidth());
    assertEquals(board.height() * scale + 2 * BoardDrawing.MARGIN, picture.getHeight());
  }
}
