package railglow.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import railglow.board.Board;
import railglow.board.Ranked;
import railglow.board.Suspect;
import railglow.config.BoardFile;
import railglow.pulse.PulseSequence;
import railglow.thermal.Look;

/** From the simulated picture to the suspects' sentences and the next step, in invented time. */
class FaultsToSuspectsTest {
  private static Board board;

  @BeforeAll
  static void readBoard() throws Exception {
    board = BoardFile.read(Path.of("docs/examples/hx12/board.yaml")).board();
  }

  private static Look hunted(String scenario, double volts, double amperes) {
    return hunted(scenario, volts, amperes, 2);
  }

  private static Look hunted(String scenario, double volts, double amperes, double period) {
    PulseSequence pulses =
        new PulseSequence("t", "t", volts, amperes, period, 4, 12, false, 2, 1, 0.05, 70, 30);
    return new BenchRun(BenchScenarios.named(scenario).orElseThrow(), pulses).toTheEnd();
  }

  private static List<Suspect> suspects(Look look) {
    return Ranked.suspects(board, "3V3", look.sources());
  }

  /** Beside it the contact of the clip at C9 warms: the short's own power is a few milliwatts. */
  @Test
  void aDeadShortIsNamedFirstAndTheClipIsNotForgotten() {
    List<Suspect> suspects = suspects(hunted("dead-short", 0.5, 2));
    assertEquals("C37", suspects.get(0).part(), suspects.toString());
    String next = Ranked.nextStep(board, "3V3", suspects, 0.02);
    assertTrue(next.startsWith("Lift C37; 3V3 should then read 45 ohm or more."), next);
    assertTrue(next.endsWith("the clip warms too: what moves when you move it is not the fault."));
  }

  @Test
  void twoLeaksOfOneRailAreBothNamedFirst() {
    List<Suspect> suspects = suspects(hunted("two-leaks", 1.2, 0.5));
    assertEquals(
        new HashSet<>(List.of("C37", "C40")),
        new HashSet<>(suspects.stream().limit(2).map(Suspect::part).toList()));
    String next = Ranked.nextStep(board, "3V3", suspects, 6.8);
    assertTrue(next.contains("lift C40") || next.contains("Lift C40"), next);
    assertTrue(next.contains("lift C37") || next.contains("Lift C37"), next);
  }

  /** The short lies at (62.5, 34.5) mm under a chip of 14 mm about (58, 30) mm. */
  @Test
  void aShortUnderALargeChipIsLocatedToItsCorner() {
    List<Suspect> suspects = suspects(hunted("short-in-chip", 0.6, 1, 8));
    Suspect first = suspects.get(0);
    assertEquals("U6", first.part());
    assertTrue(first.reason().contains("at its upper right corner"), first.reason());
    String next = Ranked.nextStep(board, "3V3", suspects, 0.4);
    assertTrue(next.startsWith("Free U6 from 3V3 (pin "), next);
  }

  @Test
  void thePartBehindAWarmerPathComesFirst() {
    List<Suspect> suspects = suspects(hunted("warm-path", 1.2, 0.5));
    assertEquals("C39", suspects.get(0).part(), suspects.toString());
    assertTrue(suspects.get(0).reason().contains("behind FB1"), suspects.get(0).reason());
    assertEquals("FB1", suspects.get(1).part());
    assertTrue(
        suspects.get(1).reason().contains("may only carry the current to the fault"),
        suspects.get(1).reason());
    assertEquals(
        "Lift C39; 3V3 should then read 45 ohm or more.",
        Ranked.nextStep(board, "3V3", suspects, 6));
  }
}
