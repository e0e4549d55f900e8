package railglow.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The dry run: what would be done, what it could do at worst, what could be seen, and refusals. */
@Command(
    name = "plan",
    mixinStandardHelpOptions = true,
    description =
        "Dry run: timeline, worst case, limits and whose they are, missing protection, what could be"
            + " seen in what time, and every refusal. Opens nothing.")
final class PlanCommand implements Callable<Integer> {
  private final Terminal terminal;
  @Mixin private RunOptions options = new RunOptions();

  @Option(
      names = "--rail-reads",
      paramLabel = "OHM",
      converter = Quantities.Ohms.class,
      description = "what the rail reads to ground, e.g. \"6.8 ohm\": forecasts that fault")
  private Double railOhms;

  @Option(
      names = "--kelvin-per-watt",
      paramLabel = "K/W",
      description =
          "how much a watt in the fault warms it (default: 4, a small part on a four-layer board;"
              + " common practice, no source)")
  private double kelvinPerWatt = 4;

  PlanCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() throws Exception {
    AsLastTime.complete(options, terminal);
    RunSetup setup = RunSetup.of(options);
    terminal.say(PlanText.of(setup));
    terminal.say("");
    terminal.say(ForecastText.of(setup, railOhms == null ? Double.NaN : railOhms, kelvinPerWatt));
    terminal.say(PeriodText.of(setup));
    terminal.say(BareMetalText.of(setup.board()));
    terminal.say("");
    terminal.say(PlanText.cautions());
    if (!setup.refusals().isEmpty()) {
      terminal.say("");
      PlanText.refusals(setup.refusals()).forEach(terminal::complain);
      return ExitCode.REFUSED;
    }
    return ExitCode.DONE;
  }
}
