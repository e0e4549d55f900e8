package railglow.board.readings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import railglow.board.Board;
import railglow.board.BoardCare;
import railglow.board.Rail;
import railglow.board.Side;
import railglow.board.readings.RailJudgement.Basis;
import railglow.board.readings.RailJudgement.State;
import railglow.board.readings.RailJudgement.Sureness;
import railglow.board.readings.RailReading.Polarity;
import railglow.units.Interval;

class RailsAssessmentTest {
  private static Rail rail(String name, double volts, double low, double high) {
    return new Rail(
        name,
        volts,
        Double.NaN,
        Double.isNaN(low) ? Optional.empty() : Optional.of(new Interval(low, high)));
  }

  private static Board board(Rail... rails) {
    return new Board(
        "test",
        10,
        10,
        Side.TOP,
        List.of(rails),
        List.of(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        BoardCare.NONE,
        List.of(),
        List.of());
  }

  private static final Board NORMALS =
      board(rail("5V", 5, 180, 5000), rail("3V3", 3.3, 45, 600), rail("CORE", 1.1, 2.2, 15));
  private static final Board PLAIN =
      board(rail("5V", 5, Double.NaN, 0), rail("CORE", 1.1, Double.NaN, 0));

  private static RailJudgement judge(Board board, String rail, RailReading... readings) {
    return RailsAssessment.of(board, List.of(readings), Optional.empty()).judgements().stream()
        .filter(judgement -> judgement.rail().equals(rail))
        .findFirst()
        .orElseThrow();
  }

  private static RailReading meter(String rail, double ohms) {
    return RailReading.ofMeter(rail, ohms, 0.2);
  }

  @Test
  void aLeakIsToldFromANormalRailAndHuntedFirst() {
    RailsAssessment all =
        RailsAssessment.of(
            NORMALS,
            List.of(meter("5V", 400), meter("3V3", 7.0), meter("CORE", 4.9)),
            Optional.empty());
    assertEquals(
        List.of(State.NORMAL, State.LEAK, State.NORMAL),
        all.judgements().stream().map(RailJudgement::state).toList());
    assertEquals(Optional.of("3V3"), all.huntFirst());
    assertEquals(Sureness.CLEAR, all.judgements().get(1).sureness());
    assertEquals(
        "3V3 reads 6.8 ohm where 45 ohm to 600 ohm is normal by the board file's normal range,"
            + " clearly outside the reading's error.",
        all.reason());
  }

  @Test
  void aDeadShortComesBeforeALeak() {
    RailsAssessment all =
        RailsAssessment.of(
            NORMALS, List.of(meter("5V", 0.25), meter("3V3", 7.0)), Optional.empty());
    assertEquals(Optional.of("5V"), all.huntFirst());
    assertEquals(State.DEAD_SHORT, all.judgements().get(0).state());
    assertTrue(all.reason().contains("before 3V3"));
  }

  @Test
  void aReadingWithinItsErrorOfTheLimitIsDoubtful() {
    assertEquals(Sureness.DOUBTFUL, judge(NORMALS, "3V3", meter("3V3", 44.5)).sureness());
    assertEquals(State.LOW, judge(NORMALS, "3V3", meter("3V3", 44.5)).state());
    assertEquals(Sureness.LIKELY, judge(NORMALS, "3V3", meter("3V3", 35)).sureness());
  }

  @Test
  void anOpenRailIsWrongButNotHunted() {
    RailsAssessment all =
        RailsAssessment.of(
            NORMALS, List.of(meter("3V3", Double.POSITIVE_INFINITY)), Optional.empty());
    assertEquals(State.HIGH, all.judgements().get(1).state());
    assertEquals(Optional.empty(), all.huntFirst());
  }

  @Test
  void aKnownGoodBoardCountsMoreThanTheBoardFile() {
    KnownGood good = KnownGood.of(List.of(meter("3V3", 20.2), meter("3V3", 30.2)));
    RailsAssessment all = RailsAssessment.of(NORMALS, List.of(meter("3V3", 18)), Optional.of(good));
    assertEquals(State.NORMAL, all.judgements().get(1).state());
    assertEquals(Basis.KNOWN_GOOD, all.judgements().get(1).basis());
    all = RailsAssessment.of(NORMALS, List.of(meter("3V3", 10)), Optional.of(good));
    assertEquals(State.LEAK, all.judgements().get(1).state());
  }

  @Test
  void aReadingThatDependsOnPolarityIsASemiconductorPath() {
    RailJudgement judgement =
        judge(
            NORMALS,
            "3V3",
            RailReading.ofMeter("3V3", 900, 0.2, 0.2, Polarity.POSITIVE),
            RailReading.ofMeter("3V3", 12, 0.2, 0.2, Polarity.NEGATIVE));
    assertEquals(State.SEMICONDUCTOR, judgement.state());
    assertTrue(judgement.reason().contains("ladder"));
  }

  @Test
  void equalReadingsBothWaysAreAPlainLeak() {
    RailJudgement judgement =
        judge(
            NORMALS,
            "3V3",
            RailReading.ofMeter("3V3", 7.0, 0.2, 0.2, Polarity.POSITIVE),
            RailReading.ofMeter("3V3", 7.1, 0.2, 0.2, Polarity.NEGATIVE));
    assertEquals(State.LEAK, judgement.state());
  }

  @Test
  void plainRulesSayThatTheyArePlainRules() {
    for (double ohms : new double[] {0.02, 0.3, 3, 30, 300, Double.POSITIVE_INFINITY}) {
      for (String rail : List.of("5V", "CORE")) {
        RailJudgement judgement = judge(PLAIN, rail, RailReading.ofMeter(rail, ohms, 0));
        assertEquals(Basis.PLAIN_RULES, judgement.basis());
        assertTrue(judgement.reason().contains("common practice, no source"));
      }
    }
    assertEquals(State.DEAD_SHORT, judge(PLAIN, "5V", RailReading.ofMeter("5V", 0.02, 0)).state());
    assertEquals(State.LEAK, judge(PLAIN, "5V", meter("5V", 7)).state());
    assertEquals(State.UNKNOWN, judge(PLAIN, "5V", meter("5V", 30)).state());
    assertEquals(State.NORMAL, judge(PLAIN, "CORE", meter("CORE", 3)).state());
  }

  @Test
  void aReadingOfNoRailIsNamedAndARailNotReadIsNotJudged() {
    RailsAssessment all = RailsAssessment.of(NORMALS, List.of(meter("9V", 10)), Optional.empty());
    assertTrue(all.notes().get(0).contains("'9V', which is no rail"));
    assertEquals(State.UNKNOWN, all.judgements().get(0).state());
    assertEquals("No rail was read.", all.reason());
  }
}
