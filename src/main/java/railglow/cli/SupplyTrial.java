package railglow.cli;

import java.nio.file.Path;
import java.util.List;
import railglow.safety.Protection;
import railglow.supply.BenchProtection;
import railglow.supply.SupplyCheck;
import railglow.supply.SupplyDescriptor;
import railglow.time.MonotonicClock;

/** The supply's part of a bench check, in words. */
final class SupplyTrial {
  private static final long PATIENCE_NANOS = 10_000_000_000L;
  private final Terminal terminal;
  private final MonotonicClock clock;

  SupplyTrial(Terminal terminal, MonotonicClock clock) {
    this.terminal = terminal;
    this.clock = clock;
  }

  /** The exit code: done, a descriptor that lies, or not proven off. */
  int run(SupplyPlace place, SupplyDescriptor descriptor, Path folder) throws UserMistake {
    try (OpenedSupply opened =
        OpenedSupply.open(place, descriptor, folder.resolve("transcript.txt"), clock)) {
      terminal.say("Supply     " + opened.identity() + " at " + place.address());
      terminal.say("           taken as: " + descriptor.name());
      SupplyCheck.Outcome outcome = SupplyCheck.run(opened.supply(), PATIENCE_NANOS, clock);
      if (!outcome.provenOff()) {
        terminal.complain("OUTPUT NOT PROVEN OFF: " + outcome.doubt());
        terminal.complain("Switch the supply off by hand, or pull the leads. Nothing was tried.");
        return ExitCode.NOT_PROVEN_OFF;
      }
      terminal.say("Output     proven off; tried with the output off:");
      for (SupplyCheck.Item item : outcome.items()) {
        terminal.say(
            (item.works() ? "  works    " : "  FAILS    ") + item.what() + ": " + item.detail());
      }
      protections(place, descriptor);
      return outcome.works() ? ExitCode.DONE : ExitCode.BAD_USE;
    }
  }

  private void protections(SupplyPlace place, SupplyDescriptor descriptor) {
    terminal.say("Protected, in the order in which it acts");
    List<String> order = BenchProtection.inOrder(descriptor, place.companion());
    for (int i = 0; i < order.size(); i++) {
      terminal.say("  " + (i + 1) + ". " + order.get(i));
    }
    for (Protection missing : BenchProtection.missing(descriptor, place.companion())) {
      boolean accepted = place.acceptedMissing().contains(missing.key());
      terminal.say(
          "  missing  "
              + missing.key()
              + (accepted ? " (accepted by the bench file): " : ": ")
              + missing.without());
    }
  }
}
