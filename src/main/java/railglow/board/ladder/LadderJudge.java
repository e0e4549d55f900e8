package railglow.board.ladder;

import java.util.ArrayList;
import java.util.List;
import railglow.units.Quantity;
import railglow.units.Unit;

/** Names the kind of path a ladder's steps show. Pure and deterministic. */
public final class LadderJudge {
  private static final int LEAST_STEPS = 4;
  private static final double SEEN_SIGMAS = 4;
  private static final double DRIFT_SIGMAS = 5;
  private static final double DRIFT_SHARE = 0.03;

  /** A bend smaller than this share of the conductance is called straight: meters bend too. */
  private static final double STRAIGHT_SHARE = 0.08;

  private static final double JUMP_FACTOR = 3;
  private static final double PLATEAU_SHARE = 0.35;

  private final List<LadderStep> steps;

  private LadderJudge(List<LadderStep> steps) {
    this.steps = steps;
  }

  /**
   * @param steps in the order they were taken, by rising level
   */
  public static LadderVerdict judge(List<LadderStep> steps) {
    return new LadderJudge(List.copyOf(steps)).verdict();
  }

  private LadderVerdict verdict() {
    boolean soon = !steps.isEmpty() && steps.size() < LEAST_STEPS && last().supplyLimits();
    if (soon || !steps.isEmpty() && steps.stream().allMatch(step -> step.supplyLimits())) {
      return supplyLimited();
    }
    if (steps.size() < LEAST_STEPS) {
      return new LadderVerdict(
          PathKind.TOO_FEW_STEPS,
          Double.NaN,
          Double.NaN,
          0,
          "",
          steps.size() + " steps are too few; " + LEAST_STEPS + " or more are needed",
          "step more finely, from almost nothing upwards");
    }
    if (steps.stream().noneMatch(LadderJudge::conducts)) {
      return open("no step drew a current beyond the reading's error, up to ");
    }
    LadderVerdict departed = departed();
    if (departed != null) {
      return departed;
    }
    LadderStep drifting = drifting();
    if (drifting != null) {
      boolean falling = drifting.driftAmperes() < 0;
      return new LadderVerdict(
          PathKind.DRIFTING,
          resistance(drifting),
          resistanceSigma(drifting),
          before(drifting),
          "gentle",
          "at "
              + volts(drifting.volts())
              + " the current "
              + (falling ? "falls" : "grows")
              + " by "
              + Quantity.format(Math.abs(drifting.driftAmperes()), Unit.AMPERE)
              + " within the step: the path changes as it warms",
          "stay below that step and let it rest between pulses"
              + (falling ? "" : "; a growing current can run away"));
    }
    return steady();
  }

  private LadderVerdict open(String found) {
    return new LadderVerdict(
        PathKind.OPEN_CONTACT,
        Double.POSITIVE_INFINITY,
        Double.NaN,
        0,
        "",
        found + volts(last().volts()),
        "check clip, lead and ground before believing an open rail");
  }

  /** What the last step says when it departs from those before it; null when it does not. */
  private LadderVerdict departed() {
    LadderStep before = steps.get(steps.size() - 2);
    return StepCheck.departure(steps.subList(0, steps.size() - 1), last())
        .map(
            sentence ->
                new LadderVerdict(
                    last().amperes() > before.amperes()
                        ? PathKind.BREAKING_DOWN
                        : PathKind.OPEN_CONTACT,
                    resistance(before),
                    resistanceSigma(before),
                    before.volts(),
                    "gentle",
                    sentence,
                    "inject below " + volts(before.volts())))
        .orElse(null);
  }

  /** The steps that rose above all before them: a rail that falls back makes no curve. */
  private List<LadderStep> rising() {
    List<LadderStep> rising = new ArrayList<>();
    for (LadderStep step : steps) {
      boolean rises = rising.isEmpty() || step.volts() > rising.get(rising.size() - 1).volts();
      if (rises && !step.supplyLimits()) {
        rising.add(step);
      }
    }
    return rising;
  }

  private LadderVerdict steady() {
    List<LadderStep> free = rising();
    if (free.size() < 3) {
      return supplyLimited();
    }
    LadderCurve curve = new LadderCurve(free);
    int jump = curve.jump(JUMP_FACTOR, SEEN_SIGMAS);
    if (jump > 0) {
      double sound = free.get(jump - 1).volts();
      return new LadderVerdict(
          PathKind.BREAKING_DOWN,
          resistance(free.get(jump - 1)),
          resistanceSigma(free.get(jump - 1)),
          sound,
          "gentle",
          "up to "
              + volts(sound)
              + " the path is steady, at "
              + volts(free.get(jump).volts())
              + " its current jumps to "
              + Quantity.format(free.get(jump).amperes(), Unit.AMPERE),
          "inject below " + volts(sound) + "; above it a part breaks down");
    }
    if (curve.saturates(PLATEAU_SHARE, SEEN_SIGMAS)) {
      return new LadderVerdict(
          PathKind.CURRENT_LIMITED,
          resistance(last()),
          resistanceSigma(last()),
          last().volts(),
          "gentle",
          "the current stops growing at "
              + Quantity.format(last().amperes(), Unit.AMPERE)
              + " though the supply does not limit it: something on the board does",
          "look for a regulator or a switch between clip and fault; inject behind it");
    }
    if (curve.bends(STRAIGHT_SHARE, SEEN_SIGMAS)) {
      double turnOn = curve.turnOnVolts();
      return new LadderVerdict(
          PathKind.JUNCTION,
          resistance(last()),
          resistanceSigma(last()),
          last().volts(),
          "gentle",
          "the current grows faster than the voltage, mostly from about "
              + volts(turnOn)
              + " on: a semiconductor path",
          "reverse or lower the reading before calling it a leak; a plain leak would draw current"
              + " below "
              + volts(turnOn)
              + " too");
    }
    if (!(curve.line().slope() > SEEN_SIGMAS * curve.slopeSigma())) {
      // A meter that shows some current at zero shows it at every level.
      return open("the current does not follow the voltage beyond the readings' error, up to ");
    }
    return ohmic(curve);
  }

  private LadderVerdict ohmic(LadderCurve curve) {
    StraightLine line = curve.line();
    double ohms = 1 / line.slope();
    double sigma = curve.slopeSigma() / (line.slope() * line.slope());
    String sequence = ohms < 0.5 ? "first-look" : "low-ohm-hunt";
    return new LadderVerdict(
        PathKind.OHMIC,
        ohms,
        sigma,
        last().volts(),
        sequence,
        "the current follows the voltage: "
            + Quantity.format(ohms, Unit.OHM)
            + " +- "
            + Quantity.format(sigma, Unit.OHM),
        ohms < 0.5
            ? "a short this low shows at once; a few slow pulses will do"
            : "pulse at the highest level the limits allow until it is sure");
  }

  private LadderVerdict supplyLimited() {
    LadderStep step = last();
    return new LadderVerdict(
        PathKind.CURRENT_LIMITED,
        resistance(step),
        resistanceSigma(step),
        step.volts(),
        "first-look",
        "the supply reaches its current limit of "
            + Quantity.format(step.amperes(), Unit.AMPERE)
            + " at "
            + volts(step.volts())
            + ": about "
            + Quantity.format(resistance(step), Unit.OHM),
        "a path this low gets its power from the current: raise the limit as far as leads and board"
            + " allow");
  }

  private static boolean conducts(LadderStep step) {
    return Math.abs(step.amperes()) > SEEN_SIGMAS * step.amperesSigma();
  }

  private LadderStep drifting() {
    for (LadderStep step : steps) {
      if (!step.supplyLimits()
          && Math.abs(step.driftAmperes()) > DRIFT_SIGMAS * step.driftSigma()
          && Math.abs(step.driftAmperes()) > DRIFT_SHARE * Math.abs(step.amperes())) {
        return step;
      }
    }
    return null;
  }

  private double before(LadderStep step) {
    int at = steps.indexOf(step);
    return at > 0 ? steps.get(at - 1).volts() : 0;
  }

  private LadderStep last() {
    return steps.get(steps.size() - 1);
  }

  private static double resistance(LadderStep step) {
    return step.volts() / step.amperes();
  }

  private static double resistanceSigma(LadderStep step) {
    return Math.abs(resistance(step))
        * Math.hypot(
            step.voltsSigma() / Math.max(1e-12, Math.abs(step.volts())),
            step.amperesSigma() / Math.max(1e-12, Math.abs(step.amperes())));
  }

  private static String volts(double value) {
    return Quantity.format(value, Unit.VOLT);
  }
}
