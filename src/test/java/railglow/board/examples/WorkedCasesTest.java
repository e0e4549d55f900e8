package railglow.board.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import railglow.board.Board;
import railglow.board.Ranked;
import railglow.board.Suspect;
import railglow.board.geometry.PixelPosition;
import railglow.board.readings.InjectionMeans;
import railglow.board.readings.LimitProposal;
import railglow.board.readings.RailJudgement.State;
import railglow.board.readings.RailsAssessment;
import railglow.board.readings.ReadingsReader;
import railglow.config.BoardFile;
import railglow.thermal.HeatSource;
import railglow.thermal.InventedSource;
import railglow.units.Interval;

/** The invented boards from readings to the next step, heat placed where their faults are. */
class WorkedCasesTest {
  private static final double PIXEL_SIGMA = 0.15;
  private static final InjectionMeans MEANS = new InjectionMeans(10, 3, 10, 0.08, 3, 5);

  private static Board board(String folder) throws Exception {
    Board board = BoardFile.read(Path.of("docs/examples", folder, "board.yaml")).board();
    assertEquals(List.of(), board.gaps(), folder);
    return board;
  }

  private static RailsAssessment assess(Board board, String folder) throws Exception {
    Path file = Path.of("docs/examples", folder, "readings.csv");
    return RailsAssessment.of(
        board, ReadingsReader.read("readings.csv", Files.readAllBytes(file)), Optional.empty());
  }

  /** A source whose place has the error it states, drawn once per seed. */
  private static HeatSource heat(Board board, double x, double y, double rise, Random random) {
    PixelPosition at = board.registration().orElseThrow().toPixel(x, y);
    double variance = PIXEL_SIGMA * PIXEL_SIGMA;
    return InventedSource.at(
            at.column() + PIXEL_SIGMA * random.nextGaussian(),
            at.row() + PIXEL_SIGMA * random.nextGaussian())
        .variance(variance)
        .rises(rise, new Interval(rise * 0.9, rise * 1.1))
        .source();
  }

  private static List<String> names(List<Suspect> suspects) {
    return suspects.stream().map(Suspect::part).toList();
  }

  @Test
  void aDeadShortUnderALargeChipIsLocatedToItsCorner() throws Exception {
    Board board = board("vf3");
    RailsAssessment assessment = assess(board, "vf3");
    assertEquals(Optional.of("1V2"), assessment.huntFirst());
    assertEquals(State.DEAD_SHORT, assessment.judgements().get(2).state());
    LimitProposal limits =
        LimitProposal.of(
            board,
            board.rail("1V2").orElseThrow(),
            assessment.judgements().get(2).railOhms(),
            MEANS);
    assertTrue(limits.constantCurrent());
    assertTrue(limits.leadWatts() > limits.faultWatts());
    List<Suspect> suspects =
        Ranked.suspects(board, "1V2", List.of(heat(board, 36, 24, 0.8, new Random(1))));
    assertEquals("U1", suspects.get(0).part());
    assertTrue(
        suspects.get(0).reason().contains("at its upper left corner"), suspects.get(0).reason());
    String next = Ranked.nextStep(board, "1V2", suspects, 0.03);
    assertTrue(next.startsWith("Free U1 from 1V2 (pin 14, 15, 26, 27) or remove it"), next);
  }

  @Test
  void twoLeakingPartsOfOneRailAreBothNamedBeforeTheirNeighbours() throws Exception {
    Board board = board("lk7");
    assertEquals(Optional.of("5V0"), assess(board, "lk7").huntFirst());
    for (int seed = 0; seed < 50; seed++) {
      Random random = new Random(seed);
      List<HeatSource> heat =
          List.of(heat(board, 24, 20, 0.9, random), heat(board, 50, 18, 0.6, random));
      List<Suspect> suspects = Ranked.suspects(board, "5V0", heat);
      assertEquals(List.of("C11", "D3"), names(suspects).subList(0, 2));
      assertEquals(
          "Lift C11; 5V0 should then read 150 ohm or more. If it does not, lift D3 next.",
          Ranked.nextStep(board, "5V0", suspects, 11.5));
    }
  }

  @Test
  void thePartBehindAWarmerFerriteIsNamedFirst() throws Exception {
    Board board = board("pm2");
    assertEquals(Optional.of("3V3"), assess(board, "pm2").huntFirst());
    assertTrue(board.notes().toString().contains("negative X"), board.notes().toString());
    Random random = new Random(3);
    List<HeatSource> both =
        new ArrayList<>(
            List.of(heat(board, 40, 26, 3.0, random), heat(board, 48, 26, 1.0, random)));
    List<Suspect> suspects = Ranked.suspects(board, "3V3", both);
    assertEquals(List.of("C14", "FB2"), names(suspects).subList(0, 2));
    assertTrue(suspects.get(0).reason().contains("behind FB2"), suspects.get(0).reason());
    List<Suspect> pathOnly = Ranked.suspects(board, "3V3", both.subList(0, 1));
    assertEquals("FB2", pathOnly.get(0).part());
    assertTrue(
        Ranked.nextStep(board, "3V3", pathOnly, 0.6).contains("inject at another point of 3V3"));
  }

  @Test
  void theDemoBoardIsWorkedFromReadingsToTheReadingThatProvesIt() throws Exception {
    Board board = board("hx12");
    RailsAssessment assessment = assess(board, "hx12");
    assertEquals(Optional.of("3V3"), assessment.huntFirst());
    int named = 0;
    for (int seed = 0; seed < 100; seed++) {
      List<Suspect> suspects =
          Ranked.suspects(board, "3V3", List.of(heat(board, 78, 31, 1.2, new Random(seed))));
      named += suspects.get(0).part().equals("C37") ? 1 : 0;
    }
    assertEquals(100, named);
  }
}
