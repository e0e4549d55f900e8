package railglow.cli;

import java.util.Set;
import railglow.config.Bench;

/**
 * Where a supply is and what its bench adds to it.
 *
 * @param channel from 1
 * @param companion whether a companion process guards it
 * @param acceptedMissing protections whose absence is accepted by name
 */
record SupplyPlace(String address, int channel, boolean companion, Set<String> acceptedMissing) {
  SupplyPlace {
    acceptedMissing = Set.copyOf(acceptedMissing);
  }

  static SupplyPlace of(Bench bench) {
    return new SupplyPlace(
        bench.supplyAddress(), bench.supplyChannel(), bench.companion(), bench.acceptedMissing());
  }
}
