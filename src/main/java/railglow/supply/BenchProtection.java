package railglow.supply;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import railglow.safety.Protection;

/** What stands between a fault and the board, in the order in which it acts. Pure. */
public final class BenchProtection {
  private BenchProtection() {}

  /**
   * What there is, first the quickest: the supply's own limits, the keeper, the companion, the
   * supply's watchdog.
   *
   * @param companion whether a companion process guards the supply
   */
  public static List<String> inOrder(SupplyDescriptor supply, boolean companion) {
    Set<Protection> missing = supply.missing();
    List<String> list = new ArrayList<>();
    list.add("the supply's own current limit");
    if (!missing.contains(Protection.OVER_VOLTAGE_PROTECTION)) {
      list.add("the supply's own over-voltage protection");
    }
    if (!missing.contains(Protection.OVER_CURRENT_PROTECTION)) {
      list.add("the supply's own over-current protection");
    }
    list.add("this program's keeper");
    if (companion) {
      list.add("a companion process");
    }
    if (!missing.contains(Protection.SUPPLY_WATCHDOG)) {
      list.add("the supply's own watchdog");
    }
    return List.copyOf(list);
  }

  /** What is missing at this bench. */
  public static Set<Protection> missing(SupplyDescriptor supply, boolean companion) {
    EnumSet<Protection> missing = EnumSet.noneOf(Protection.class);
    missing.addAll(supply.missing());
    if (!companion) {
      missing.add(Protection.COMPANION);
    }
    return missing;
  }
}
