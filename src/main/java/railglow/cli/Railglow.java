package railglow.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** The command without a sub-command: says what there is. */
@Command(
    name = "railglow",
    mixinStandardHelpOptions = true,
    versionProvider = VersionProvider.class,
    description = {
      "Finds the hot part on a faulty supply rail: pulses a bench supply in step with a thermal"
          + " camera, averages ON minus OFF, names the suspects, and keeps a record.",
      "",
      "For isolated low-voltage boards only, never for anything connected to the mains. Batteries"
          + " out, capacitors discharged. Parts get hot and may give off fumes. Your local codes and"
          + " qualified practice come first."
    },
    footer = {
      "",
      "Exit codes: 0 done; 2 bad use or bad file; 3 refused by the limits; 4 stopped by a limit,",
      "output proven off; 5 stopped and output NOT proven off; 130 stopped by the operator,",
      "output proven off."
    })
final class Railglow implements Runnable {
  @Spec private CommandSpec spec;

  @Override
  public void run() {
    spec.commandLine().usage(spec.commandLine().getOut());
  }
}
