package railglow.board.ladder;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Paths in closed form, read with 1 mV and 1 mA of noise from 20 mV up to 1 V. */
class LadderJudgeTest {
  private static final double VOLT_NOISE = 1e-3;
  private static final double AMPERE_NOISE = 1e-3;
  private static final int RUNS = 200;

  private static List<LadderStep> steps(DoubleUnaryOperator amperes, double limit, Random random) {
    List<LadderStep> steps = new ArrayList<>();
    for (int i = 1; i <= 12; i++) {
      double volts = i * i / 144.0;
      double truth = amperes.applyAsDouble(volts);
      boolean limited = truth > limit;
      if (limited) {
        truth = limit;
        double low = 0;
        double high = volts;
        for (int k = 0; k < 60; k++) {
          double middle = (low + high) / 2;
          if (amperes.applyAsDouble(middle) < limit) {
            low = middle;
          } else {
            high = middle;
          }
        }
        volts = low;
      }
      steps.add(
          LadderStep.settled(
              volts + VOLT_NOISE * random.nextGaussian(),
              VOLT_NOISE,
              truth + AMPERE_NOISE * random.nextGaussian(),
              AMPERE_NOISE,
              limited));
    }
    return steps;
  }

  private static int named(PathKind kind, DoubleUnaryOperator amperes, double limit) {
    int named = 0;
    for (int run = 0; run < RUNS; run++) {
      Random random = new Random(1000L + run);
      named += LadderJudge.judge(steps(amperes, limit, random)).kind() == kind ? 1 : 0;
    }
    return named;
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.5, 2, 6.8, 40})
  void aResistorIsOhmicAndItsErrorIsHonest(double ohms) {
    double squares = 0;
    int ohmic = 0;
    for (int run = 0; run < RUNS; run++) {
      LadderVerdict verdict = LadderJudge.judge(steps(volts -> volts / ohms, 10, new Random(run)));
      ohmic += verdict.kind() == PathKind.OHMIC ? 1 : 0;
      squares += Math.pow((verdict.ohms() - ohms) / verdict.ohmsSigma(), 2) / RUNS;
    }
    assertTrue(ohmic >= 0.985 * RUNS, "called ohmic in " + ohmic + " of " + RUNS);
    // The mean square of 200 standardised errors scatters by 0.1.
    assertTrue(squares > 0.5 && squares < 1.5, "mean square of standardised errors: " + squares);
  }

  /** Shockley's diode with a resistor in series, by bisection; volts and ohms. */
  private static DoubleUnaryOperator diode(double saturation, double emission, double series) {
    return volts -> {
      double low = 0;
      double high = volts;
      for (int k = 0; k < 60; k++) {
        double junction = (low + high) / 2;
        if (junction + saturation * Math.expm1(junction / emission) * series < volts) {
          low = junction;
        } else {
          high = junction;
        }
      }
      return (volts - low) / series;
    };
  }

  @Test
  void aDiodeIsAJunction() {
    DoubleUnaryOperator diode = diode(1e-9, 0.045, 1.0);
    assertTrue(named(PathKind.JUNCTION, diode, 10) >= 0.98 * RUNS);
  }

  @Test
  void aJunctionBesideANormalLoadIsAJunctionAndNoBreakdown() {
    DoubleUnaryOperator diode = diode(1e-9, 0.034, 1.5);
    DoubleUnaryOperator path = volts -> volts / 45 + diode.applyAsDouble(volts);
    assertTrue(named(PathKind.JUNCTION, path, 10) >= 0.95 * RUNS);
  }

  @Test
  void aShortThatPullsTheSupplyToItsLimitAtOnceStillGivesItsResistance() {
    List<LadderStep> steps =
        List.of(
            LadderStep.settled(0.0042, 1e-3, 0.21, 1e-3, false),
            LadderStep.settled(0.0100, 1e-3, 0.50, 1e-3, true));
    LadderVerdict verdict = LadderJudge.judge(steps);
    assertEquals(PathKind.CURRENT_LIMITED, verdict.kind());
    assertEquals(0.020, verdict.ohms(), 1e-9);
  }

  @Test
  void aPathThatGivesWayBreaksDownAndTheSoundLevelIsNamed() {
    DoubleUnaryOperator path = volts -> volts / 20 + (volts > 0.6 ? (volts - 0.6) / 0.3 + 0.4 : 0);
    assertTrue(named(PathKind.BREAKING_DOWN, path, 10) >= 0.98 * RUNS);
    LadderVerdict verdict = LadderJudge.judge(steps(path, 10, new Random(5)));
    assertEquals(81 / 144.0, verdict.highestSoundVolts(), 0.01);
  }

  @Test
  void aPathThatHoldsItsCurrentIsCurrentLimited() {
    assertTrue(
        named(PathKind.CURRENT_LIMITED, volts -> Math.min(volts / 2, 0.12), 10) >= 0.98 * RUNS);
  }

  @Test
  void aSupplyAtItsLimitFromTheStartIsNamedWithTheResistanceItSaw() {
    LadderVerdict verdict = LadderJudge.judge(steps(volts -> volts / 0.004, 0.5, new Random(2)));
    assertEquals(PathKind.CURRENT_LIMITED, verdict.kind());
    assertTrue(verdict.reason().contains("the supply reaches its current limit"));
    assertEquals("first-look", verdict.sequence());
  }

  @Test
  void noCurrentAtAnyStepIsAnOpenContact() {
    assertTrue(named(PathKind.OPEN_CONTACT, volts -> 0, 10) >= 0.97 * RUNS);
  }

  @Test
  void aCurrentThatChangesWithinAStepIsDrifting() {
    List<LadderStep> steps = new ArrayList<>(steps(volts -> volts / 5, 10, new Random(3)));
    LadderStep last = steps.get(11);
    steps.set(11, new LadderStep(last.volts(), 1e-3, last.amperes(), 1e-3, -0.02, 1e-3, false));
    LadderVerdict verdict = LadderJudge.judge(steps);
    assertEquals(PathKind.DRIFTING, verdict.kind());
    assertEquals("gentle", verdict.sequence());
    assertTrue(verdict.highestSoundVolts() < last.volts());
  }

  @Test
  void aRailThatFallsWhileItsCurrentJumpsHasBrokenDown() {
    List<LadderStep> steps = new ArrayList<>(steps(volts -> volts / 20, 10, new Random(3)));
    steps.set(8, LadderStep.settled(0.30, 1e-3, 0.40, 1e-3, false));
    LadderVerdict verdict = LadderJudge.judge(steps.subList(0, 9));
    assertEquals(PathKind.BREAKING_DOWN, verdict.kind());
    assertEquals(steps.get(7).volts(), verdict.highestSoundVolts(), 1e-12);
  }

  @Test
  void threeStepsAreTooFew() {
    assertEquals(
        PathKind.TOO_FEW_STEPS,
        LadderJudge.judge(steps(volts -> volts / 5, 10, new Random(3)).subList(0, 3)).kind());
  }

  @Test
  void theStepThatDepartsStopsTheLadderAndSoundPathsNeverDo() {
    DoubleUnaryOperator breaking = volts -> volts / 20 + (volts > 0.6 ? 1.0 : 0);
    DoubleUnaryOperator opening = volts -> volts > 0.6 ? 0 : volts / 5;
    int stopped = 0;
    for (int run = 0; run < RUNS; run++) {
      assertTrue(firstDeparture(steps(breaking, 10, new Random(run))) == 9);
      assertTrue(firstDeparture(steps(opening, 10, new Random(run))) == 9);
      stopped += firstDeparture(steps(volts -> volts / 6.8, 10, new Random(run))) >= 0 ? 1 : 0;
      stopped +=
          firstDeparture(steps(volts -> 1e-4 * Math.expm1(volts / 0.12), 10, new Random(run))) >= 0
              ? 1
              : 0;
    }
    assertEquals(0, stopped);
  }

  private static int firstDeparture(List<LadderStep> steps) {
    for (int i = 0; i < steps.size(); i++) {
      Optional<String> departure = StepCheck.departure(steps.subList(0, i), steps.get(i));
      if (departure.isPresent()) {
        return i;
      }
    }
    return -1;
  }
}
