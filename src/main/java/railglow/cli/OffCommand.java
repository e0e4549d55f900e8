package railglow.cli;

import java.io.IOException;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import railglow.config.ConfigException;
import railglow.link.Transcript;
import railglow.supply.EmergencyOff;
import railglow.supply.SupplyAddress;
import railglow.supply.SupplyDescriptor;
import railglow.time.SystemClock;

/** Off, from any state, with nothing but an address. */
@Command(
    name = "off",
    mixinStandardHelpOptions = true,
    description = {
      "Drives the outputs of the supply at an address off and proves it; needs no bench file. Says"
          + " truly when it can't be proven, and exits with 5 then.",
      "ADDRESS is tcp://HOST:PORT, serial:/dev/ttyUSB0[?baud=9600] or usbtmc:/dev/usbtmc0."
    })
final class OffCommand implements Callable<Integer> {
  private final Terminal terminal;

  @Parameters(index = "0", paramLabel = "ADDRESS", description = "where the supply is")
  private String address;

  @Option(
      names = "--supply",
      paramLabel = "FILE",
      description = "a descriptor of the supply; without it the shipped ones are tried")
  private String descriptor;

  @Option(
      names = "--patience",
      paramLabel = "SECONDS",
      converter = Quantities.Seconds.class,
      description = "how long to try for each output (default: 10 s)")
  private double patienceSeconds = 10;

  OffCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() throws Exception {
    SupplyAddress where = where();
    List<EmergencyOff.Result> results =
        EmergencyOff.drive(
            where,
            known(),
            Math.round(patienceSeconds * 1e9),
            SystemClock.INSTANCE,
            Transcript.NONE);
    boolean proven = true;
    for (EmergencyOff.Result result : results) {
      terminal.say(result.sentence());
      proven &= result.proven();
    }
    if (!proven) {
      terminal.complain("OUTPUT NOT PROVEN OFF. Switch the supply off by hand, or pull the leads.");
    }
    return proven ? ExitCode.DONE : ExitCode.NOT_PROVEN_OFF;
  }

  private SupplyAddress where() throws UserMistake {
    try {
      return SupplyAddress.parse(address);
    } catch (IllegalArgumentException e) {
      throw new UserMistake(e.getMessage());
    }
  }

  /** A descriptor that can't be read must not keep off from being sent. */
  private List<SupplyDescriptor> known() throws UserMistake, IOException {
    if (descriptor != null) {
      try {
        return KnownSupplies.of(descriptor).descriptors();
      } catch (ConfigException | UserMistake e) {
        terminal.complain(e.getMessage());
        terminal.complain("Going on without it: off is sent in every way that is known.");
      }
    }
    return KnownSupplies.shipped(terminal).descriptors();
  }
}
