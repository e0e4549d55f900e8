package railglow.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;
import railglow.sim.BenchPorts;
import railglow.sim.SimulatedBench;
import railglow.time.SystemClock;

/** The main job. */
@Command(
    name = "hunt",
    mixinStandardHelpOptions = true,
    description = {
      "Pulses a rail in step with the camera until it is certain what gets warm, or until the cap;"
          + " names the suspects and writes a run folder with report and pictures.",
      "Stops at once, output off, when any limit is passed. Ctrl-C stops in order."
    })
final class HuntCommand implements Callable<Integer> {
  private final Terminal terminal;
  @Spec private CommandSpec spec;
  @Mixin private RunOptions options = new RunOptions();
  @Mixin private EnteredOptions entered = new EnteredOptions();

  @Mixin private LiveView.Options live = new LiveView.Options();

  @Mixin private SimulatedBoardOptions simulatedBoard = new SimulatedBoardOptions();

  HuntCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() throws Exception {
    AsLastTime.complete(options, terminal);
    RunSetup setup = entered.on(RunSetup.of(options));
    if (!setup.refusals().isEmpty()) {
      PlanText.refusals(setup.refusals()).forEach(terminal::complain);
      return ExitCode.REFUSED;
    }
    AsLastTime.remember(options);
    Hunt hunt = new Hunt(terminal, options.runs, commandLine(spec), live);
    if (!options.simulated) {
      return hunt.run(setup);
    }
    try (SimulatedBench bench =
        SimulatedBench.start(simulatedBoard.scenario(), BenchPorts.ANY, SystemClock.INSTANCE)) {
      return hunt.run(SimulatedBenches.joined(setup, bench));
    }
  }

  /** The words as typed. */
  static List<String> commandLine(CommandSpec spec) {
    List<String> words = new ArrayList<>(List.of("railglow"));
    words.addAll(spec.root().commandLine().getParseResult().originalArgs());
    return words;
  }
}
