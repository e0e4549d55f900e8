package railglow.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import railglow.config.ConfigException;
import railglow.config.SupplyDescriptorFile;
import railglow.supply.CompanionMain;
import railglow.supply.SupplyDescriptor;
import railglow.time.SystemClock;

/**
 * The second process that guards the supply. Only the program itself starts it, and every hunt
 * waits for it, so it goes without the reading of a command line for people.
 */
final class CompanionEntry {
  private CompanionEntry() {}

  static boolean isMeant(String[] words) {
    return words.length > 0 && words[0].equals("companion");
  }

  /** Runs the companion to its end and gives its exit code. */
  static int run(String[] words) {
    try {
      return CompanionMain.run(
          Arrays.copyOfRange(words, 1, words.length),
          System.in,
          System.out,
          Terminal.ofProcess()::complain,
          CompanionEntry::descriptor,
          SystemClock.INSTANCE);
    } catch (IOException | RuntimeException e) {
      Terminal.ofProcess().complain("railglow: the companion can't run: " + e.getMessage());
      return ExitCode.BAD_USE;
    }
  }

  private static SupplyDescriptor descriptor(String text) throws IOException {
    try {
      return SupplyDescriptorFile.parse(Path.of("descriptor"), text);
    } catch (ConfigException e) {
      throw new IOException(e.getMessage(), e);
    }
  }
}
