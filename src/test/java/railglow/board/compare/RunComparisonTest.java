package railglow.board.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import railglow.board.compare.ComparedSource.Presence;
import railglow.board.compare.ComparisonWords.Question;
import railglow.board.geometry.Registration;
import railglow.board.geometry.RegistrationPoint;
import railglow.thermal.HeatSource;
import railglow.thermal.InventedSource;
import railglow.thermal.RiseByModel;
import railglow.thermal.RiseByModel.Model;
import railglow.units.Interval;

class RunComparisonTest {
  private static final PulseKind PULSES = new PulseKind(2, false);

  private static HeatSource source(double column, double row, double rise, double sigma) {
    return InventedSource.at(column, row)
        .variance(0.04)
        .rises(rise, new Interval(rise - 1.959963985 * sigma, rise + 1.959963985 * sigma))
        .source();
  }

  private static ComparedRun run(String label, double watts, HeatSource... sources) {
    return new ComparedRun(label, List.of(sources), watts, 0.1, PULSES, Optional.empty());
  }

  /** Scale 2 px/mm with the board shifted in the picture by a number of columns. */
  private static Optional<Registration> shifted(double columns) {
    List<RegistrationPoint> points = new ArrayList<>();
    for (double[] at : new double[][] {{0, 0}, {100, 0}, {100, 80}, {0, 80}, {50, 40}}) {
      points.add(new RegistrationPoint("P", at[0], at[1], columns + 2 * at[0], 176 - 2 * at[1]));
    }
    return Optional.of(Registration.of(points, 0.1));
  }

  private static final Function<ComparedSource, String> NAMES =
      source -> source.x() > 100 ? "C37" : "L3";

  @Test
  void whatStaysHotAtBothPointsIsTheFault() {
    ComparedRun first = run("J1", 1, source(50, 50, 3, 0.1), source(164, 114, 1.0, 0.05));
    ComparedRun second = run("C9", 2, source(164.3, 113.8, 2.02, 0.05));
    RunComparison comparison = RunComparison.of(first, second);
    assertEquals(
        List.of(Presence.BOTH, Presence.FIRST_ONLY),
        comparison.sources().stream().map(ComparedSource::presence).toList());
    assertEquals(1.01 - 1.0, comparison.sources().get(0).difference(), 1e-9);
    assertTrue(comparison.sources().get(0).p() > 0.5);
    List<String> words =
        ComparisonWords.of(Question.TWO_POINTS, first, second, comparison, "K/W", NAMES);
    assertEquals(
        "C37 stays hot at both points: the fault is there; L3 warms only as a path.", words.get(0));
    assertEquals(4, words.size());
    assertEquals("Per watt are swings in step with the pulse.", words.get(3));
  }

  @Test
  void aSourceThatOneRunDidNotCallIsNotAbsentWhereItsPictureIsAsWarm() {
    ComparedRun first = run("J1", 1, source(164, 114, 1.0, 0.05));
    ComparedRun second = run("C9", 1);
    RunComparison comparison = RunComparison.of(first, second).lookedAt(source -> true);
    ComparedSource source = comparison.sources().get(0);
    assertEquals(Presence.UNCALLED_IN_SECOND, source.presence());
    assertFalse(source.absenceIsSure());
    List<String> words =
        ComparisonWords.of(Question.TWO_POINTS, first, second, comparison, "K/W", NAMES);
    assertEquals("C37 stays hot at both points: the fault is there.", words.get(0));
    assertTrue(
        words.get(1).contains("called only in J1, 1.00 K/W; the picture of C9"), words.get(1));
    assertTrue(
        ComparisonWords.of(Question.BEFORE_AFTER, first, second, comparison, "K/W", NAMES)
            .get(0)
            .contains("Not mended yet: C37"));
    assertEquals(
        "Per watt, no place of J1 is surely warmer than on C9.",
        ComparisonWords.of(
                Question.KNOWN_GOOD,
                second,
                first,
                RunComparison.of(second, first).lookedAt(any -> true),
                "K/W",
                NAMES)
            .get(0));
    assertEquals(
        Presence.FIRST_ONLY,
        RunComparison.of(first, second).lookedAt(any -> false).sources().get(0).presence());
  }

  @Test
  void aCameraThatMovedIsUndoneByBothRegistrations() {
    ComparedRun first =
        new ComparedRun("a", List.of(source(164, 114, 1, 0.1)), 1, 0.1, PULSES, shifted(8));
    ComparedRun second =
        new ComparedRun("b", List.of(source(184, 114, 1, 0.1)), 1, 0.1, PULSES, shifted(28));
    RunComparison comparison = RunComparison.of(first, second);
    assertEquals(Presence.BOTH, comparison.sources().get(0).presence());
    assertEquals(78, comparison.sources().get(0).x(), 1e-6);
    assertTrue(comparison.inMillimetres());
    ComparedRun unregistered = run("c", 1, source(164, 114, 1, 0.1));
    assertThrows(IllegalArgumentException.class, () -> RunComparison.of(first, unregistered));
  }

  @Test
  void aSourceGoneAfterTheRepairIsConfirmedOnlyWhenItWouldHaveBeenSeen() {
    ComparedRun before = run("before", 1, source(164, 114, 1.0, 0.05));
    ComparedRun after = run("after", 1);
    RunComparison comparison = RunComparison.of(before, after);
    assertTrue(comparison.sources().get(0).absenceIsSure());
    assertEquals(
        "C37 is gone and nothing else is hot: the repair is confirmed.",
        ComparisonWords.of(Question.BEFORE_AFTER, before, after, comparison, "K/W", NAMES).get(0));
    ComparedRun weak = new ComparedRun("after", List.of(), 0.05, 0.1, PULSES, Optional.empty());
    comparison = RunComparison.of(before, weak);
    assertFalse(comparison.sources().get(0).absenceIsSure());
    assertTrue(
        ComparisonWords.of(Question.BEFORE_AFTER, before, weak, comparison, "K/W", NAMES)
            .get(0)
            .contains("could have missed it"));
  }

  @Test
  void aPlaceWarmerPerWattThanOnTheGoodBoardIsTheFault() {
    ComparedRun good = run("good", 1, source(50, 50, 2.0, 0.05), source(164, 114, 0.3, 0.05));
    ComparedRun bad = run("bad", 2, source(50, 50, 4.1, 0.05), source(164, 114, 2.4, 0.05));
    RunComparison comparison = RunComparison.of(good, bad);
    assertEquals(
        "C37 is warmer per watt than on good: the fault is there.",
        ComparisonWords.of(Question.KNOWN_GOOD, good, bad, comparison, "K/W", NAMES).get(0));
  }

  @Test
  void withoutPowerNothingIsSaidPerWatt() {
    ComparedRun first = run("a", Double.NaN, source(164, 114, 1, 0.1));
    ComparedRun second = run("b", 1, source(164, 114, 1, 0.1));
    RunComparison comparison = RunComparison.of(first, second);
    assertTrue(Double.isNaN(comparison.sources().get(0).p()));
    assertTrue(
        ComparisonWords.of(Question.TWO_POINTS, first, second, comparison, "K/W", NAMES)
            .get(1)
            .contains("power is not known"));
  }

  @Test
  void equalSourcesDifferByChanceAsOftenAsStated() {
    Random random = new Random(1);
    int below = 0;
    int tries = 2000;
    for (int i = 0; i < tries; i++) {
      // Each run repeats the truth with its share of error, and noise comes upon that.
      double once = 1 + PerWatt.REPEAT_SHARE * random.nextGaussian();
      double again = 2 + 2 * PerWatt.REPEAT_SHARE * random.nextGaussian();
      ComparedRun first = run("a", 1, source(164, 114, once + 0.05 * random.nextGaussian(), 0.05));
      ComparedRun second =
          run("b", 2, source(164, 114, again + 0.08 * random.nextGaussian(), 0.08));
      below += RunComparison.of(first, second).sources().get(0).p() < 0.05 ? 1 : 0;
    }
    // 5 % of 2000 with a standard deviation of 0.49 %.
    assertEquals(0.05, below / (double) tries, 0.02);
  }

  /** One place at a period: its swing, and its settled rise by one body and by a sheet. */
  private static ComparedRun pulsed(double period, double swing, double body, double sheet) {
    HeatSource at = source(164, 114, swing, 0.005);
    List<RiseByModel> models =
        List.of(
            new RiseByModel(Model.ONE_BODY, body, new Interval(0.97 * body, 1.03 * body)),
            new RiseByModel(Model.SHEET, sheet, new Interval(0.97 * sheet, 1.03 * sheet)));
    HeatSource source =
        InventedSource.like(at)
            .swings(swing, at.swingInterval95())
            .settles(body, new Interval(0.9 * body, 1.05 * sheet))
            .channels(swing, 0)
            .models(models)
            .source();
    return new ComparedRun(
        "every " + period + " s",
        List.of(source),
        1,
        0.1,
        new PulseKind(period, false),
        Optional.empty());
  }

  @Test
  void runsOfDifferentPeriodsAreComparedByWhatTheyWouldSettleAt() {
    RunComparison comparison =
        RunComparison.of(pulsed(2, 0.15, 0.65, 0.95), pulsed(8, 0.35, 0.66, 0.94));
    assertTrue(!comparison.bySwing());
    assertEquals(0, comparison.sources().get(0).difference(), 0.02);
    assertTrue(comparison.sources().get(0).p() > 0.5, comparison.toString());
  }

  /** The intervals overlap, but by every model the second is half as warm again. */
  @Test
  void theErrorOfTheModelIsCommonToBothRuns() {
    ComparedRun first = pulsed(2, 0.15, 0.65, 0.95);
    ComparedRun second = pulsed(8, 0.5, 0.97, 1.42);
    assertTrue(second.sources().get(0).riseInterval95().low() < 0.95);
    ComparedSource compared = RunComparison.of(first, second).sources().get(0);
    assertTrue(compared.p() < 1e-3, compared.toString());
  }

  @Test
  void runsOfTheSamePeriodAreComparedByTheirSwingsWhateverTheirRises() {
    ComparedSource compared =
        RunComparison.of(pulsed(2, 0.15, 0.65, 0.95), pulsed(2, 0.15, 1.1, 1.6)).sources().get(0);
    assertEquals(0, compared.difference());
    ComparedSource warmer =
        RunComparison.of(pulsed(2, 0.15, 0.65, 0.95), pulsed(2, 0.25, 0.65, 0.95)).sources().get(0);
    assertTrue(warmer.p() < 1e-3, warmer.toString());
  }
}
