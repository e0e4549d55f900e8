package railglow.board;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import railglow.config.BoardFile;
import railglow.config.EnteredFile;

class EnteredTest {
  private static Board board;

  @BeforeAll
  static void readBoard() throws Exception {
    board = BoardFile.read(Path.of("docs/examples/hx12/board.yaml")).board();
  }

  private static Entered reflected(double celsius) {
    return new Entered(OptionalDouble.of(celsius), OptionalDouble.empty(), List.of());
  }

  private static Entered clip(String place) {
    return new Entered(OptionalDouble.empty(), OptionalDouble.empty(), List.of(place));
  }

  @Test
  void theReflectedTemperatureEnteredGoesBeforeTheBoardFile() {
    BoardSurfaces surfaces = reflected(31.5).on(board).care().surfaces();
    assertEquals(31.5, surfaces.reflectedCelsius());
    assertEquals(3, surfaces.reflectedSigmaKelvin());
    assertEquals("entered", surfaces.reflectedFrom());
    assertTrue(surfaces.reflector().isEmpty());
    assertEquals(board.care().surfaces().areas(), surfaces.areas());
  }

  @ParameterizedTest
  @ValueSource(doubles = {-50.1, 100.1, 297, Double.NaN, Double.POSITIVE_INFINITY})
  void aTemperatureNoBenchMirrorsIsRefused(double celsius) {
    String message =
        assertThrows(IllegalArgumentException.class, () -> reflected(celsius).on(board))
            .getMessage();
    assertTrue(message.contains("allowed is -50 degC to 100 degC"), message);
  }

  @Test
  void anErrorWithoutItsTemperatureIsRefused() {
    Entered error = new Entered(OptionalDouble.empty(), OptionalDouble.of(2), List.of());
    assertTrue(
        assertThrows(IllegalArgumentException.class, () -> error.on(board))
            .getMessage()
            .contains("give both"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "C9 | C9 | 25.4 | 17.4",
        "'point 12 mm, 40 mm' | 'point 12 mm, 40 mm' | 12 | 40",
        "'probe=point 88 px, 96 px' | probe | 40 | 40"
      })
  void aClipIsAPartOrAPoint(String typed, String name, double x, double y) {
    Clip clip = clip(typed).on(board).care().clips().get(0);
    assertEquals(name, clip.name());
    assertEquals(x, clip.outline().xMillimetres(), 0.3);
    assertEquals(y, clip.outline().yMillimetres(), 0.3);
  }

  @Test
  void aClipOnAPinLiesOnThatPinsPad() {
    Clip first = clip("C9.1").on(board).care().clips().get(0);
    Clip second = clip("C9:2").on(board).care().clips().get(0);
    assertEquals("C9 pin 1", first.name());
    double apart =
        Math.hypot(
            first.outline().xMillimetres() - second.outline().xMillimetres(),
            first.outline().yMillimetres() - second.outline().yMillimetres());
    assertTrue(apart > 1 && apart < 3, "pads of a 2 mm part are " + apart + " mm apart");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "C999 | is no part of the board",
        "C9.7 | has no pin 7; it has 1, 2",
        "'point 300 mm, 4 mm' | beside the board",
        "'area 1 mm, 1 mm, 4 mm, 4 mm' | sits at a point",
        "'point 3, 4' | has no unit"
      })
  void aClipThatIsNowhereIsRefused(String typed, String complaint) {
    String message =
        assertThrows(IllegalArgumentException.class, () -> clip(typed).on(board)).getMessage();
    assertTrue(message.contains(complaint), message);
  }

  @Test
  void whatWasEnteredIsKeptBitForBitAndCorrectedByWhatComesLater(@TempDir Path folder)
      throws Exception {
    Path file = folder.resolve("used/entered.yaml");
    Entered entered =
        new Entered(
            OptionalDouble.of(21.1 / 3),
            OptionalDouble.of(1.0 / 3),
            List.of("C9.1", "it's=point 1 mm, 2 mm"));
    EnteredFile.write(file, entered);
    assertEquals(entered, EnteredFile.read(file));
    assertEquals(Entered.NOTHING, EnteredFile.read(folder.resolve("none.yaml")));
    assertEquals(
        new Entered(entered.reflectedCelsius(), entered.reflectedSigmaKelvin(), List.of("C37")),
        entered.correctedBy(clip("C37")));
    assertEquals(
        new Entered(OptionalDouble.of(30), OptionalDouble.empty(), entered.clips()),
        entered.correctedBy(reflected(30)));
  }
}
