package railglow.board.readings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import railglow.board.Board;
import railglow.board.BoardCare;
import railglow.board.Rail;
import railglow.board.Side;
import railglow.board.ladder.LadderStep;

/** What a supply with a meter of known faults reads of rails of known resistance. */
class MeasuredRailTest {
  private static final MeterErrors METERS = new MeterErrors(5e-3, 1e-3, 2e-3, 2e-3);
  private static final MeasuringLeads LEADS = new MeasuringLeads(0.12, 0.023);
  private static final double[] LEVELS = {0.02, 0.05, 0.1, 0.18, 0.27, 0.37, 0.48, 0.6};

  /** Steps read through a meter that is off at zero by its full error, both ways. */
  private static List<LadderStep> steps(
      DoubleUnaryOperator amperesAt,
      double limit,
      double zeroVolts,
      double zeroAmperes,
      long seed) {
    Random random = new Random(seed);
    List<LadderStep> steps = new ArrayList<>();
    for (double level : LEVELS) {
      double amperes = amperesAt.applyAsDouble(level);
      boolean limited = amperes > limit;
      double volts = limited ? level * limit / amperes : level;
      steps.add(
          LadderStep.settled(
              volts + zeroVolts + 3e-4 * random.nextGaussian(),
              1e-3,
              Math.min(limit, amperes) + zeroAmperes + 1e-4 * random.nextGaussian(),
              1e-3,
              limited));
      if (limited) {
        break;
      }
    }
    return steps;
  }

  private static MeasuredRail measured(List<LadderStep> steps) {
    return MeasuredRail.of("3V3", steps, LEADS, METERS, false);
  }

  /** Two-wire error: a meter reads rail plus leads, and what is taken off is known to 23 mohm. */
  @Property(tries = 200, seed = "4301")
  void anOhmicRailIsReadWithinItsErrorWhateverTheMetersShowAtZero(
      @ForAll @DoubleRange(min = 6.2, max = 40) double ohms,
      @ForAll @DoubleRange(min = -1, max = 1) double zeroVolts,
      @ForAll @DoubleRange(min = -1, max = 1) double zeroAmperes) {
    MeasuredRail measured =
        measured(steps(v -> v / ohms, 0.1, 5e-3 * zeroVolts, 2e-3 * zeroAmperes, 1));
    RailReading reading = measured.readings().get(0);
    assertEquals(ohms, reading.railOhms(), 3 * reading.sigmaOhms());
    assertEquals(0.12, reading.readOhms() - reading.railOhms(), 1e-9);
    assertTrue(reading.sigmaOhms() >= 0.023 && reading.sigmaOhms() < 0.15 * ohms);
  }

  @Test
  void twoWireErrorIsStatedAndFourWireSaysThatLeadsAreInNoneOfIt() {
    String two = measured(steps(v -> v / 10, 0.1, 0, 0, 2)).sentence();
    assertTrue(two.contains("2-wire: 120 mohm of leads are taken off, known to 23 mohm"), two);
    MeasuredRail four =
        MeasuredRail.of(
            "3V3", steps(v -> v / 10, 0.1, 0, 0, 2), MeasuringLeads.SENSED_AT_BOARD, METERS, false);
    assertTrue(four.sentence().contains("4-wire"), four.sentence());
    assertEquals(0, four.readings().get(0).leadOhms());
  }

  @Test
  void aDeadShortIsReadAtTheCurrentLimitAndItsErrorSaidToBeLarge() {
    MeasuredRail measured = measured(steps(v -> v / 0.03, 0.1, 0, 0, 3));
    RailReading reading = measured.readings().get(0);
    assertEquals(0.03, reading.railOhms(), reading.sigmaOhms());
    // 5 mV and 2 mA at 0.1 A: 50 mohm of meter error and 23 mohm of leads, by hand.
    assertEquals(0.056, reading.sigmaOhms(), 0.003);
    assertTrue(measured.sentence().contains("sense at the board (4-wire)"), measured.sentence());
  }

  @Test
  void aRailThatDrawsNothingIsNotCalledOpenButMoreThanWhatCanBeTold() {
    MeasuredRail measured = measured(steps(v -> v / 4700, 0.1, 0, 0, 4));
    assertEquals(List.of(), measured.readings());
    assertTrue(measured.atLeastOhms() > 100 && measured.atLeastOhms() < 200);
    assertTrue(measured.sentence().contains("Read it with an ohm-meter"), measured.sentence());
  }

  @Test
  void aMeterThatShowsCurrentAtZeroDoesNotMakeALeakOfAnOpenRail() {
    MeasuredRail measured = measured(steps(v -> v / 4700, 0.1, 0, 8e-3, 5));
    assertEquals(List.of(), measured.readings());
  }

  /** Shockley's equation beside 45 ohm; from 0.48 V to 0.6 V the current doubles and more. */
  @Test
  void aJunctionGivesTwoReadingsThatAreJudgedASemiconductorPath() {
    MeasuredRail measured =
        measured(steps(v -> v / 45 + 1e-9 * Math.expm1(v / 0.034), 0.1, 0, 0, 6));
    assertEquals(2, measured.readings().size());
    Rail rail = new Rail("3V3", 3.3, Double.NaN, Optional.empty());
    Board board =
        new Board(
            "test",
            10,
            10,
            Side.TOP,
            List.of(rail),
            List.of(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            BoardCare.NONE,
            List.of(),
            List.of());
    RailsAssessment assessment = RailsAssessment.of(board, measured.readings(), Optional.empty());
    assertEquals(
        RailJudgement.State.SEMICONDUCTOR,
        assessment.judgements().get(0).state(),
        measured.readings().toString());
  }

  @Test
  void swappedLeadsMarkTheReading() {
    MeasuredRail measured =
        MeasuredRail.of("3V3", steps(v -> v / 10, 0.1, 0, 0, 7), LEADS, METERS, true);
    assertEquals(RailReading.Polarity.NEGATIVE, measured.readings().get(0).polarity());
    assertTrue(measured.sentence().contains("leads swapped"), measured.sentence());
  }
}
