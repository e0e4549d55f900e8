package railglow.config;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railglow.board.Board;
import railglow.board.Part;
import railglow.board.Ranked;
import railglow.board.Suspect;
import railglow.thermal.HeatSource;
import railglow.thermal.InventedSource;
import railglow.units.Interval;

class BoardFileTest {
  private static final Path HX12 = Path.of("docs/examples/hx12/board.yaml");

  @TempDir Path folder;

  /** A source at a pixel with 0.15 px error; pixel 164, 114 is the place of C37. */
  private static HeatSource sourceAt(double column, double row) {
    return InventedSource.at(column, row)
        .variance(0.0225)
        .swings(1.0, new Interval(1, 1.4))
        .settles(1.2, new Interval(1, 1.4))
        .channels(1.0, 0.2)
        .source();
  }

  private LoadedBoard read(String yaml) throws ConfigException, IOException {
    Path file = folder.resolve("board.yaml");
    Files.writeString(file, yaml);
    return BoardFile.read(file);
  }

  @Test
  void theDemoBoardLoadsWithoutAGap() throws ConfigException {
    LoadedBoard loaded = BoardFile.read(HX12);
    Board board = loaded.board();
    assertEquals(List.of(), board.gaps());
    assertEquals(List.of(), board.notes());
    assertEquals(
        List.of("24V_IN", "12V", "5V0", "3V3", "1V8", "1V1_CORE"),
        board.rails().stream().map(rail -> rail.name()).toList());
    assertTrue(board.parts().size() >= 60);
    assertEquals(45, board.rail("3V3").orElseThrow().normalOhms().orElseThrow().low(), 1e-9);
    Part c37 = board.part("C37").orElseThrow();
    assertEquals(78.0, c37.xMillimetres(), 1e-9);
    assertEquals(31.0, c37.yMillimetres(), 1e-9);
    assertTrue(board.isOn(c37, "3V3"));
    assertEquals(
        java.util.Set.of("board", "placement", "netlist", "picture"), loaded.usedFiles().keySet());
  }

  @Test
  void theHeatAtC37NamesC37AndTheReadingThatProvesIt() throws ConfigException {
    Board board = BoardFile.read(HX12).board();
    List<Suspect> suspects = Ranked.suspects(board, "3V3", List.of(sourceAt(164.1, 113.9)));
    assertEquals("C37", suspects.get(0).part());
    assertEquals(1, suspects.get(0).rank());
    assertTrue(suspects.get(0).onRail());
    assertEquals(
        "Lift C37; 3V3 should then read 45 ohm or more.",
        Ranked.nextStep(board, "3V3", suspects, 6.8));
  }

  @Test
  void theNominalMapHoldsWithinTheAccuracyOfItsPoints() throws ConfigException {
    var registration = BoardFile.read(HX12).board().registration().orElseThrow();
    var pixel = registration.toPixel(78, 31);
    assertEquals(8 + 2 * 78.0, pixel.column(), 0.3);
    assertEquals(176 - 2 * 31.0, pixel.row(), 0.3);
    assertTrue(registration.rmsResidualPixels() < 0.3);
  }

  @Test
  void aBoardWithRailsAloneLoadsAndSaysWhatItCannotDo() throws Exception {
    Board board =
        read("""
                name: bare
                size: { width: 10 mm, height: 10 mm }
                rails:
                  - name: VCC
                """)
            .board();
    assertEquals(5, board.gaps().size(), board.gaps().toString());
    assertEquals(List.of(), Ranked.suspects(board, "VCC", List.of(sourceAt(5, 5))));
    assertTrue(
        Ranked.nextStep(board, "VCC", List.of(), Double.NaN).contains("placement"),
        "the next step says what is missing");
  }

  @Test
  void everyProblemIsNamedWithItsLine() throws Exception {
    ConfigException problem =
        assertThrows(
            ConfigException.class,
            () ->
                read(
                    """
                    name: bad
                    size: { width: 10, height: 10 mm }
                    rails:
                      - name: VCC
                        nominal: 3.3 V
                        highest-injection: 3.3 V
                      - name: vcc
                        colour: red
                    placement: { file: none.csv }
                    """));
    String message = problem.getMessage();
    assertTrue(message.contains("board.yaml:2"), message);
    assertTrue(message.contains("board.yaml:6"), message);
    assertTrue(message.contains("board.yaml:7"), message);
    assertTrue(message.contains("board.yaml:8"), message);
    assertTrue(message.contains("board.yaml:9"), message);
  }

  @Test
  void aPlacementWithoutUnitsIsRefusedAndWhatStillWorksIsSaid() throws Exception {
    Files.writeString(folder.resolve("p.csv"), "Ref,X,Y,Side\nC1,1,2,top\n");
    ConfigException problem =
        assertThrows(
            ConfigException.class,
            () ->
                read(
                    """
                    name: no unit
                    size: { width: 10 mm, height: 10 mm }
                    rails:
                      - name: VCC
                        nominal: 3.3 V
                    placement: { file: p.csv }
                    """));
    assertTrue(problem.getMessage().contains("p.csv:2:4"), problem.getMessage());
    assertTrue(problem.getMessage().contains("unit: mm"), problem.getMessage());
    assertTrue(problem.getMessage().contains("still finds the heat's place"));
  }

  @Test
  void threeOrCollinearPointsLeaveAGapAndTheRestWorks() throws Exception {
    String head =
        """
        name: three
        size: { width: 100 mm, height: 100 mm }
        rails:
          - { name: VCC, nominal: 5 V }
        registration:
          points:
        """;
    String point = "    - { name: P%d, x: %d mm, y: %d mm, column: %d px, row: %d px }%n";
    StringBuilder three = new StringBuilder(head);
    StringBuilder line = new StringBuilder(head);
    for (int i = 0; i < 5; i++) {
      if (i < 3) {
        three.append(point.formatted(i, i * 10, i * i * 5, i * 20, 100 - i * i * 10));
      }
      line.append(point.formatted(i, i * 10, i * 10, i * 20, 100 - i * 20));
    }
    Board few = read(three.toString()).board();
    assertTrue(few.registration().isEmpty());
    assertTrue(few.gaps().toString().contains("3 registration points are too few"));
    Board collinear = read(line.toString()).board();
    assertTrue(collinear.registration().isEmpty());
    assertTrue(collinear.gaps().toString().contains("one line"), collinear.gaps().toString());
  }
}
