package railglow.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import railglow.board.imports.ImportException;
import railglow.board.ladder.LadderJudge;
import railglow.board.ladder.LadderStep;
import railglow.board.ladder.LadderVerdict;
import railglow.board.ladder.StepCheck;
import railglow.board.ladder.StepsReader;
import railglow.units.Quantity;
import railglow.units.Unit;

/** Stepped voltage and current: ohmic, junction, or drifting. */
@Command(
    name = "ladder",
    mixinStandardHelpOptions = true,
    description =
        "Judges steps of voltage and current of a rail: ohmic, junction-like, current-limited,"
            + " drifting with heat, breaking down or an open contact; recommends level and sequence.")
final class LadderCommand implements Callable<Integer> {
  private final Terminal terminal;

  @Option(
      names = "--steps",
      paramLabel = "FILE",
      required = true,
      description = {
        "table of steps: voltage,current at the board, and where known",
        "voltage-error,current-error,drift,drift-error,constant-current"
      })
  private Path stepsFile;

  LadderCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() throws Exception {
    if (!Files.isRegularFile(stepsFile)) {
      throw new UserMistake("there is no table of steps " + stepsFile);
    }
    List<LadderStep> steps;
    try {
      steps = StepsReader.read(stepsFile.toString(), Files.readAllBytes(stepsFile));
    } catch (ImportException e) {
      throw new UserMistake(e.getMessage());
    }
    terminal.say(text(steps));
    return ExitCode.DONE;
  }

  static List<String> text(List<LadderStep> steps) {
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
    Summary.wrap(lines, "Path       ", verdict.kind().words() + ": " + verdict.reason() + ".");
    Summary.wrap(lines, "Advice     ", verdict.advice() + ".");
    if (!verdict.sequence().isEmpty()) {
      lines.add("Sequence   " + verdict.sequence());
    }
    return lines;
  }
}
