package railglow.cli;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import railglow.journal.RunFolder;
import railglow.link.PortLink;
import railglow.link.Transcript;
import railglow.safety.Protection;
import railglow.supply.LineManners;
import railglow.supply.ScpiSupply;
import railglow.supply.Supply;
import railglow.supply.SupplyAddress;
import railglow.supply.SupplyDescriptor;
import railglow.time.MonotonicClock;

/** A supply that was reached and knows its own name, with all that protects its bench. */
final class OpenedSupply implements AutoCloseable {
  private final ScpiSupply supply;
  private final String identity;
  private final List<String> protections;

  private OpenedSupply(ScpiSupply supply, String identity, List<String> protections) {
    this.supply = supply;
    this.identity = identity;
    this.protections = List.copyOf(protections);
  }

  /**
   * @throws UserMistake with one sentence when there is no such supply or it is another one
   */
  static OpenedSupply open(RunSetup setup, RunFolder folder, MonotonicClock clock)
      throws UserMistake {
    SupplyDescriptor descriptor = setup.supply();
    try {
      PortLink link =
          new PortLink(
              SupplyAddress.parse(setup.bench().supplyAddress())
                  .port(descriptor.line().orElse(LineManners.USUAL), clock),
              descriptor.wire().link(),
              clock,
              Transcript.NONE);
      ScpiSupply supply = ScpiSupply.connect(link, descriptor, setup.bench().supplyChannel());
      return new OpenedSupply(supply, supply.identify(), protections(setup));
    } catch (IOException | IllegalArgumentException e) {
      throw new UserMistake(e.getMessage());
    }
  }

  Supply supply() {
    return supply;
  }

  String identity() {
    return identity;
  }

  /** What protects this bench, in order. */
  List<String> protections() {
    return protections;
  }

  @Override
  public void close() {
    supply.close();
  }

  private static List<String> protections(RunSetup setup) {
    List<String> list = new ArrayList<>();
    if (!setup.supply().missing().contains(Protection.OVER_CURRENT_PROTECTION)) {
      list.add("the supply's own over-current protection");
    }
    if (!setup.supply().missing().contains(Protection.OVER_VOLTAGE_PROTECTION)) {
      list.add("the supply's own over-voltage protection");
    }
    list.add("this program's keeper");
    if (!setup.supply().missing().contains(Protection.SUPPLY_WATCHDOG)) {
      list.add("the supply's own watchdog");
    }
    return list;
  }
}
