package railglow.safety;

import java.util.Set;
import railglow.units.Interval;

/**
 * What a supply's channel can do, as plain facts.
 *
 * @param name for messages, for example {@code "supply descriptor generic-scpi"}
 * @param volts settable
 * @param amperes settable current limit
 * @param voltsStep smallest change of the voltage; 0 when not known
 * @param amperesStep smallest change of the current limit; 0 when not known
 * @param maxWatts the channel's power; infinite when only volts and amperes limit it
 * @param missing protections this supply, or the bench around it, does not have
 */
public record SupplyFacts(
    String name,
    Interval volts,
    Interval amperes,
    double voltsStep,
    double amperesStep,
    double maxWatts,
    Set<Protection> missing) {
  public SupplyFacts {
    missing = Set.copyOf(missing);
  }

  /** As this, with one more protection missing. */
  public SupplyFacts without(Protection protection) {
    java.util.EnumSet<Protection> all = java.util.EnumSet.of(protection);
    all.addAll(missing);
    return new SupplyFacts(name, volts, amperes, voltsStep, amperesStep, maxWatts, all);
  }
}
