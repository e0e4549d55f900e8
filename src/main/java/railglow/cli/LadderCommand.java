package railglow.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import railglow.board.imports.ImportException;
import railglow.board.ladder.StepsReader;
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
          + " and sequence. Stops at the first step that departs. No camera watches meanwhile.",
      "With --steps it judges a table of steps taken elsewhere and opens nothing."
    })
final class LadderCommand implements Callable<Integer> {
  private final Terminal terminal;
  @Mixin private RunOptions options = new RunOptions();

  @Option(
      names = "--steps",
      paramLabel = "FILE",
      description = {
        "judge this table instead: voltage,current at the board, and where known",
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

  @Option(
      names = "--scenario",
      paramLabel = "NAME",
      description = "with --simulated: which simulated board (default: hx12)")
  private String scenario = "hx12";

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
    LadderAtBench ladder = new LadderAtBench(terminal, options.runs, levels, dwellSeconds);
    if (!options.simulated) {
      return ladder.run(setup);
    }
    try (SimulatedBench bench =
        SimulatedBench.start(
            SimulateCommand.scenario(scenario, List.of()), BenchPorts.ANY, SystemClock.INSTANCE)) {
      return ladder.run(
          setup.withBench(
              setup
                  .bench()
                  .withAddresses(
                      SimulatedBenches.supplyAddress(bench),
                      SimulatedBenches.cameraAddress(bench))));
    }
  }

  private int judge() throws Exception {
    if (!Files.isRegularFile(stepsFile)) {
      throw new UserMistake("there is no table of steps " + stepsFile);
    }
    try {
      terminal.say(
          LadderText.of(StepsReader.read(stepsFile.toString(), Files.readAllBytes(stepsFile))));
    } catch (ImportException e) {
      throw new UserMistake(e.getMessage());
    }
    return ExitCode.DONE;
  }
}
