package railglow.board.places;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import railglow.board.Board;
import railglow.config.BoardFile;

class PlacesTest {
  private static final int WIDTH = 256;
  private static final int HEIGHT = 192;

  private static Board board() throws Exception {
    return BoardFile.read(Path.of("docs/examples/hx12/board.yaml")).board();
  }

  private static PlacePixels pixels(String text) throws Exception {
    Board board = board();
    return PlacePixels.of(PlaceReader.parse(text, board), board.registration(), WIDTH, HEIGHT);
  }

  private static String refused(String text, Board board) {
    return assertThrows(
            IllegalArgumentException.class,
            () ->
                PlacePixels.of(
                    PlaceReader.parse(text, board),
                    board == null ? Optional.empty() : board.registration(),
                    WIDTH,
                    HEIGHT))
        .getMessage();
  }

  @Test
  void aPointInThePictureIsItsNearestPixel() throws Exception {
    assertArrayEquals(new int[] {12 * WIDTH + 31}, pixels("p=point 30.6 px, 12.4 px").indices());
  }

  @Test
  void aLineIsEveryPixelItPasses() throws Exception {
    assertArrayEquals(
        new int[] {5, 5, 5, 6, 6, 6, 7, 7, 7, 8, 8, 8},
        pixels("diagonal=line 5 px, 5 px, 8 px, 8 px").runs());
    assertEquals(11, pixels("row=line 10 px, 4 px, 20 px, 4 px").indices().length);
  }

  @Test
  void anAreaInThePictureHoldsBothNamedCornersWhicheverComesFirst() throws Exception {
    int[] runs = {10, 20, 22, 11, 20, 22};
    assertArrayEquals(runs, pixels("a=area 20 px, 10 px, 22 px, 11 px").runs());
    assertArrayEquals(runs, pixels("a=area 22 px, 11 px, 20 px, 10 px").runs());
  }

  @Test
  void aPlaceOnTheBoardGoesThroughTheRegistration() throws Exception {
    // FID1 of the board file: 84 mm, 46 mm is seen at column 176.2, row 83.9
    assertArrayEquals(new int[] {84 * WIDTH + 176}, pixels("f=point 84 mm, 46 mm").indices());
  }

  @Test
  void aPartIsTheAreaOfItsOutline() throws Exception {
    PlacePixels part = pixels("u10");
    assertEquals("U10", part.name());
    assertTrue(part.indices().length > 20, part.indices().length + " pixels");
  }

  @Test
  void aPartSmallerThanAPixelIsThePixelAtItsMiddle() throws Exception {
    assertEquals(1, pixels("tiny=area 30.0 mm, 30.0 mm, 30.1 mm, 30.1 mm").indices().length);
  }

  @Test
  void pixelsComeBackFromTheirRuns() throws Exception {
    PlacePixels part = pixels("U10");
    assertArrayEquals(
        part.indices(), PlacePixels.ofRuns("U10", part.runs(), WIDTH, HEIGHT).indices());
    assertThrows(
        IllegalArgumentException.class,
        () -> PlacePixels.ofRuns("x", new int[] {192, 0, 1}, WIDTH, HEIGHT));
  }

  @Test
  void whatCanNotBeUsedIsSaidWithWhatIsRight() throws Exception {
    assertTrue(refused("X99", board()).contains("'X99' is no part of the board; else write"));
    assertTrue(refused("C37", null).contains("no part, since no board file was given"));
    assertTrue(refused("p=point 300 px, 5 px", board()).contains("columns 0 to 255"));
    assertTrue(refused("p=point 5 mm, 5 mm", null).contains("add registration points"));
    assertTrue(refused("p=point 5 mm", board()).contains("needs 2 numbers with their unit"));
    assertTrue(refused("a=area 5 mm, 5 mm, 9 px, 9 px", board()).contains("all in px"));
    assertTrue(refused("a=area 5, 5, 9, 9", board()).contains("place 'a=area 5, 5, 9, 9'"));
  }
}
