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

/** Volts, amperes, watts and status beside frames, without pulsing. */
@Command(
    name = "log",
    mixinStandardHelpOptions = true,
    description = {
      "Records volts, amperes, watts and status beside the camera's frames, without pulsing: with a"
          + " steady injection (--level), beside a supply that somebody else controls"
          + " (--watch-supply), or with the camera alone. Follows named places in degrees and"
          + " kelvin, live and in the record.",
      "Enter sets a mark; text and Enter sets a named one; q and Enter ends. Ctrl-C stops in order.",
      "",
      "With an injection all limits of a run hold, and a passed one stops it, output off. Without"
          + " one this program can switch nothing off."
    })
final class LogCommand implements Callable<Integer> {
  private final Terminal terminal;
  @Spec private CommandSpec spec;
  @Mixin private LogOptions options = new LogOptions();

  @Mixin private SimulatedBoardOptions simulatedBoard = new SimulatedBoardOptions();

  LogCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() throws Exception {
    LogSetup setup = LogSetup.of(options, terminal);
    if (!setup.refusals().isEmpty()) {
      PlanText.refusals(setup.refusals()).forEach(terminal::complain);
      return ExitCode.REFUSED;
    }
    AsLastTime.remember(options.forSetup());
    List<String> words = new ArrayList<>(List.of("railglow"));
    words.addAll(spec.root().commandLine().getParseResult().originalArgs());
    LogAtBench log = new LogAtBench(terminal, options, words);
    if (!options.simulated) {
      return log.run(setup);
    }
    try (SimulatedBench bench =
        SimulatedBench.start(simulatedBoard.scenario(), BenchPorts.ANY, SystemClock.INSTANCE)) {
      return log.run(setup.withRun(SimulatedBenches.joined(setup.run(), bench)));
    }
  }
}
