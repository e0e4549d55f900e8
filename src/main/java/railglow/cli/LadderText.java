package railglow.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import railglow.board.ladder.LadderJudge;
import railglow.board.ladder.LadderStep;
import railglow.board.ladder.LadderVerdict;
import railglow.board.ladder.StepCheck;
import railglow.units.Quantity;
import railglow.units.Unit;

/** A ladder's steps and what they say, on one screen. */
final class LadderText {
  private LadderText() {}

  /**
   * @param errors one sentence on how well each step is known
   */
  static List<String> of(List<LadderStep> steps, String errors) {
    List<String> lines = new ArrayList<>();
    lines.add("  voltage     current     resistance");
    for (int i = 0; i < steps.size(); i++) {
      LadderStep step = steps.get(i);
      Optional<String> departure = StepCheck.departure(steps.subList(0, i), step);
      lines.add(
          String.format(
                  Locale.ROOT,
                  "  %-11s %-11s %-11s %s",
                  Quantity.format(step.volts(), Unit.VOLT),
                  Quantity.format(step.amperes(), Unit.AMPERE),
                  step.amperes() > 0
                      ? Quantity.format(step.volts() / step.amperes(), Unit.OHM)
                      : "-",
                  step.supplyLimits() ? "supply at its limit" : departure.orElse(""))
              .stripTrailing());
    }
    LadderVerdict verdict = LadderJudge.judge(steps);
    lines.add("");
    Summary.wrap(lines, "Errors     ", errors);
    Summary.wrap(lines, "Path       ", verdict.kind().words() + ": " + verdict.reason() + ".");
    Summary.wrap(lines, "Advice     ", verdict.advice() + ".");
    if (!verdict.sequence().isEmpty()) {
      lines.add("Sequence   " + verdict.sequence());
    }
    return lines;
  }

  /** The table that {@code --steps} reads. */
  static String csv(List<LadderStep> steps) {
    StringBuilder text =
        new StringBuilder(
            "voltage,current,voltage-error,current-error,drift,drift-error,constant-current\n");
    for (LadderStep step : steps) {
      text.append(step.volts() + " V,")
          .append(step.amperes() + " A,")
          .append(step.voltsSigma() + " V,")
          .append(step.amperesSigma() + " A,")
          .append(step.driftAmperes() + " A,")
          .append(step.driftSigma() + " A,")
          .append(step.supplyLimits() ? "yes\n" : "no\n");
    }
    return text.toString();
  }
}
