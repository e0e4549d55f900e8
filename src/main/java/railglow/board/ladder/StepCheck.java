package railglow.board.ladder;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import railglow.units.Quantity;
import railglow.units.Unit;

/**
 * Whether a new step departs from those before it, so that the ladder stops at once. Pure.
 *
 * <p>A sound path continues the line through its last steps or bends gently; a part that breaks
 * down or a contact that opens does neither.
 */
public final class StepCheck {
  private static final int LOOKS_BACK = 4;
  private static final double SIGMAS = 6;

  /** A junction's current grows faster than a line; only more than this factor is a departure. */
  private static final double MOST_GROWTH = 6;

  private static final double LEAST_SHARE = 0.4;

  private StepCheck() {}

  /**
   * @param before the steps so far, by rising voltage
   * @param next the new one
   * @return one sentence when the ladder must stop
   */
  public static Optional<String> departure(List<LadderStep> before, LadderStep next) {
    if (before.size() < 3 || next.supplyLimits()) {
      return Optional.empty();
    }
    List<LadderStep> last = before.subList(Math.max(0, before.size() - LOOKS_BACK), before.size());
    double[] x = last.stream().mapToDouble(LadderStep::volts).toArray();
    double[] y = last.stream().mapToDouble(LadderStep::amperes).toArray();
    double[] sigma = last.stream().mapToDouble(LadderStep::amperesSigma).toArray();
    if (x[x.length - 1] <= x[0]) {
      return Optional.empty();
    }
    StraightLine line = StraightLine.of(x, y, sigma);
    double expected = line.at(next.volts());
    double error = Math.hypot(line.sigmaAt(next.volts()), next.amperesSigma());
    double previous = y[y.length - 1];
    // The leads may eat so much of the level that the rail falls while the current jumps.
    double ratio = Math.max(1, next.volts() / x[x.length - 1]);
    double most = Math.max(expected, Math.max(previous, 0) * ratio) * MOST_GROWTH + SIGMAS * error;
    if (next.amperes() > most) {
      return Optional.of(
          "at "
              + volts(next)
              + " the current jumps to "
              + amperes(next.amperes())
              + ", where "
              + amperes(expected)
              + " was to be expected: the path breaks down");
    }
    double least = Math.min(expected, previous) * LEAST_SHARE - SIGMAS * error;
    if (next.amperes() < least) {
      return Optional.of(
          String.format(
              Locale.ROOT,
              "at %s the current falls to %s, where %s was to be expected: a contact opened or a part"
                  + " gave way",
              volts(next),
              amperes(next.amperes()),
              amperes(expected)));
    }
    return Optional.empty();
  }

  private static String volts(LadderStep step) {
    return Quantity.format(step.volts(), Unit.VOLT);
  }

  private static String amperes(double value) {
    return Quantity.format(value, Unit.AMPERE);
  }
}
