package railglow.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;
import railglow.config.ConfigException;
import railglow.config.SupplyDescriptorFile;
import railglow.supply.CompanionMain;
import railglow.supply.SupplyDescriptor;
import railglow.time.SystemClock;

/** The second process that guards the supply; started by the program itself. */
@Command(
    name = "companion",
    hidden = true,
    mixinStandardHelpOptions = true,
    description = "Started by the program itself: drives the output off when its controller dies.")
final class CompanionCommand implements Callable<Integer> {
  @Parameters(arity = "4", description = "address, channel, limit, process")
  private String[] words;

  @Override
  public Integer call() throws Exception {
    return CompanionMain.run(
        words, System.in, System.out, CompanionCommand::descriptor, SystemClock.INSTANCE);
  }

  private static SupplyDescriptor descriptor(String text) throws IOException {
    try {
      return SupplyDescriptorFile.parse(Path.of("descriptor"), text);
    } catch (ConfigException e) {
      throw new IOException(e.getMessage(), e);
    }
  }
}
