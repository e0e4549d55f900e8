package railglow.config;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import railglow.board.Rail;
import railglow.units.Interval;
import railglow.units.Quantity;
import railglow.units.Unit;

/** Reads the rails of a board file. */
final class BoardRails {
  private static final double HIGHEST_VOLTS = 60;
  private static final double HIGHEST_OHMS = 1e9;

  private BoardRails() {}

  /**
   * @param nets gets the net's name where it is not the rail's
   * @param gaps gets a sentence for what a rail does not say
   */
  static List<Rail> read(ConfigSection root, Map<String, String> nets, List<String> gaps) {
    List<Rail> rails = new ArrayList<>();
    for (ConfigSection section : root.sections("rails")) {
      String name = section.text("name");
      if (rails.stream().anyMatch(rail -> rail.name().equalsIgnoreCase(name))) {
        section.report("name", "is '" + name + "' a second time; each rail has one entry");
      }
      section.optionalText("net").ifPresent(net -> nets.put(name, net));
      OptionalDouble nominal = section.optionalQuantity("nominal", Unit.VOLT, 0.1, HIGHEST_VOLTS);
      OptionalDouble highest =
          section.optionalQuantity("highest-injection", Unit.VOLT, 0.01, HIGHEST_VOLTS);
      if (nominal.isEmpty() && !section.has("nominal")) {
        gaps.add("rail " + name + " has no nominal voltage: at most 1 V is injected");
      }
      if (nominal.isPresent()
          && highest.isPresent()
          && highest.getAsDouble() >= nominal.getAsDouble()) {
        section.report(
            "highest-injection",
            "is "
                + Quantity.format(highest.getAsDouble(), Unit.VOLT)
                + ", not below 'nominal' "
                + Quantity.format(nominal.getAsDouble(), Unit.VOLT));
      }
      Optional<Interval> normal = normal(section);
      if (normal.isEmpty()) {
        gaps.add(
            "rail " + name + " has no normal resistance: its reading is judged by plain rules");
      }
      rails.add(new Rail(name, nominal.orElse(Double.NaN), highest.orElse(Double.NaN), normal));
    }
    if (rails.isEmpty()) {
      root.report("rails", "must list at least one rail with 'name', 'nominal' and 'normal'");
    }
    return rails;
  }

  private static Optional<Interval> normal(ConfigSection rail) {
    Optional<ConfigSection> section = rail.optionalSection("normal");
    if (section.isEmpty()) {
      return Optional.empty();
    }
    double from = section.get().quantity("from", Unit.OHM, 0, HIGHEST_OHMS);
    double to =
        section
            .get()
            .optionalQuantity("to", Unit.OHM, 0, HIGHEST_OHMS)
            .orElse(Double.POSITIVE_INFINITY);
    if (!(from <= to)) {
      if (!Double.isNaN(from)) {
        section.get().report("to", "must not be below 'from'");
      }
      return Optional.empty();
    }
    return Optional.of(new Interval(from, to));
  }
}
