package railglow.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import railglow.board.imports.ImportException;
import railglow.board.ladder.LadderJudge;
import railglow.board.ladder.LadderStep;
import railglow.board.ladder.PathKind;
import railglow.board.ladder.StepsReader;
import railglow.journal.Journal;
import railglow.journal.JournalException;
import railglow.journal.JournalReader;
import railglow.journal.RunFolder;
import railglow.run.ladder.LadderPlan;
import railglow.run.ladder.LadderReplay;
import railglow.run.ladder.LadderRun;
import railglow.sim.BenchPorts;
import railglow.sim.SimulatedBench;
import railglow.time.SystemClock;

/** Stepped voltage and current: ohmic, junction, or drifting. */
@Command(
    name = "ladder",
    mixinStandardHelpOptions = true,
    description = {
      "Steps a rail up from almost nothing to the level, and judges the path: ohmic, junction-like,"
          + " current-limited, drifting with heat, breaking down or an open contact; recommends level"
          + " and sequence. Stops at the first step that departs, and when the camera sees too much"
          + " heat. The record of a ladder can be judged again.",
      "With --steps it judges a table of steps, or the folder of a ladder, and opens nothing."
    })
final class LadderCommand implements Callable<Integer> {
  private final Terminal terminal;
  @Mixin private RunOptions options = new RunOptions();

  @Option(
      names = "--steps",
      paramLabel = "FILE",
      description = {
        "judge this table or ladder's folder instead: voltage,current at the board, and where known",
        "voltage-error,current-error,drift,drift-error,constant-current"
      })
  private Path stepsFile;

  @Option(
      names = "--levels",
      paramLabel = "N",
      description = "how many levels, 4 to 50 (default: 12)")
  private int levels = 12;

  @Option(
      names = "--dwell",
      paramLabel = "SECONDS",
      converter = Quantities.Seconds.class,
      description = "how long each level is held, \"200 ms\" to \"10 s\" (default: \"500 ms\")")
  private double dwellSeconds = 0.5;

  @Mixin private SimulatedBoardOptions simulatedBoard = new SimulatedBoardOptions();

  @Option(
      names = "--without-camera",
      description = "do not open the bench's camera: nothing guards against heat meanwhile")
  private boolean withoutCamera;

  @Spec private CommandSpec spec;

  LadderCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() throws Exception {
    if (stepsFile != null) {
      return judge();
    }
    if (levels < 4 || levels > 50) {
      throw new UserMistake("--levels is " + levels + "; allowed is 4 to 50");
    }
    if (!(dwellSeconds >= 0.2 && dwellSeconds <= 10)) {
      throw new UserMistake("--dwell is " + dwellSeconds + " s; allowed is 200 ms to 10 s");
    }
    AsLastTime.complete(options, terminal);
    RunSetup setup = RunSetup.of(options);
    if (!setup.refusals().isEmpty()) {
      PlanText.refusals(setup.refusals()).forEach(terminal::complain);
      return ExitCode.REFUSED;
    }
    AsLastTime.remember(options);
    if (!options.simulated) {
      return climb(setup);
    }
    try (SimulatedBench bench =
        SimulatedBench.start(simulatedBoard.scenario(), BenchPorts.ANY, SystemClock.INSTANCE)) {
      return climb(SimulatedBenches.joined(setup, bench));
    }
  }

  private int climb(RunSetup setup) throws Exception {
    LadderAtBench ladder =
        new LadderAtBench(
            terminal,
            options.runs.resolve("ladders"),
            !withoutCamera,
            HuntCommand.commandLine(spec));
    LadderPlan plan = LadderPlan.upTo(setup.outputPlan().highestVolts(), levels, dwellSeconds);
    LadderRun.Outcome outcome = ladder.run(setup, plan, "Ladder");
    terminal.say("");
    terminal.say(LadderText.of(outcome.steps(), LadderAtBench.readBack(setup).sentence()));
    inAll(setup, outcome.steps());
    terminal.say("Kept       " + ladder.folder().root());
    return outcome.ending().exitCode();
  }

  /** The fit's error is that of its scatter; meters and leads may all be off the same way. */
  private void inAll(RunSetup setup, List<LadderStep> steps) {
    PathKind kind = LadderJudge.judge(steps).kind();
    if (kind == PathKind.OHMIC || kind == PathKind.CURRENT_LIMITED) {
      Summary.sentence(
          terminal, "In all     ", RailMeasurement.measured(setup, steps, false).sentence());
    }
  }

  private int judge() throws Exception {
    if (Files.isDirectory(stepsFile)) {
      RunFolder folder = RunFolderOf.existing(stepsFile);
      try {
        Journal journal = JournalReader.read(folder);
        terminal.say("Ladder     " + folder.name() + ", " + journal.ending());
        terminal.say(
            LadderText.of(LadderReplay.steps(journal), LadderReplay.readBack(journal).sentence()));
      } catch (JournalException e) {
        throw new UserMistake(e.getMessage());
      }
      return ExitCode.DONE;
    }
    if (!Files.isRegularFile(stepsFile)) {
      throw new UserMistake("there is no table of steps " + stepsFile);
    }
    try {
      StepsReader.Table table =
          StepsReader.table(stepsFile.toString(), Files.readAllBytes(stepsFile));
      terminal.say(LadderText.of(table.steps(), table.errors()));
    } catch (ImportException e) {
      throw new UserMistake(e.getMessage());
    }
    return ExitCode.DONE;
  }
}
