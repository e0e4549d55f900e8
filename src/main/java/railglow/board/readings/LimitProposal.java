package railglow.board.readings;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeSet;
import railglow.board.Board;
import railglow.board.DelicateParts;
import railglow.board.DelicateParts.Bears;
import railglow.board.Part;
import railglow.board.PartKind;
import railglow.board.Rail;
import railglow.units.Quantity;
import railglow.units.Unit;

/**
 * How hard a rail may be pushed, and what that does. Pure.
 *
 * @param volts proposed level at the supply
 * @param amperes proposed current limit
 * @param maxVolts the highest level allowed by all that is known
 * @param worstWatts level times limit
 * @param faultWatts what the fault would get; NaN when the rail was not read
 * @param leadWatts what the leads would waste
 * @param constantCurrent whether the supply would settle on its current limit
 * @param reasons why these figures, one sentence each
 * @param cautions what to mind, one sentence each
 */
public record LimitProposal(
    double volts,
    double amperes,
    double maxVolts,
    double worstWatts,
    double faultWatts,
    double leadWatts,
    boolean constantCurrent,
    List<String> reasons,
    List<String> cautions) {
  /** Injection stays below a rail's nominal voltage by this share. */
  public static final double SHARE_OF_NOMINAL = 0.8;

  /** Where the nominal voltage is not known. */
  public static final double UNKNOWN_RAIL_VOLTS = 1.0;

  /** A fault that gets this much shows within a minute; more only makes it hotter. */
  private static final double WANTED_WATTS = 1.0;

  private static final double ROOM_ABOVE_CURRENT = 1.25;
  private static final double ROOM_ABOVE_VOLTAGE = 1.2;
  private static final double FIRST_TOUCH_AMPERES = 0.1;

  public LimitProposal {
    reasons = List.copyOf(reasons);
    cautions = List.copyOf(cautions);
  }

  /**
   * @param railOhms the rail's resistance, leads taken off; NaN when not read
   */
  public static LimitProposal of(Board board, Rail rail, double railOhms, InjectionMeans means) {
    List<String> reasons = new ArrayList<>();
    Cap volts = voltCap(board, rail, means);
    Cap amperes = ampereCap(board, rail, means);
    reasons.add("At most " + Quantity.format(volts.value(), Unit.VOLT) + ": " + volts.origin());
    reasons.add(
        Double.isInfinite(amperes.value())
            ? "No limit of leads, connector or bench is known for the current"
            : "At most " + Quantity.format(amperes.value(), Unit.AMPERE) + ": " + amperes.origin());
    List<String> cautions = cautions(board, rail);
    if (Double.isNaN(railOhms) || Double.isInfinite(railOhms)) {
      double level = roundedDown(Math.min(volts.value(), UNKNOWN_RAIL_VOLTS));
      double limit = Math.min(amperes.value(), FIRST_TOUCH_AMPERES);
      reasons.add("The rail was not read: start gently, with a ladder");
      return new LimitProposal(
          level,
          limit,
          volts.value(),
          level * limit,
          Double.NaN,
          limit * limit * means.leadOhms(),
          false,
          reasons,
          cautions);
    }
    return measured(railOhms, means, volts.value(), amperes.value(), reasons, cautions);
  }

  private static LimitProposal measured(
      double railOhms,
      InjectionMeans means,
      double maxVolts,
      double maxAmperes,
      List<String> reasons,
      List<String> cautions) {
    double total = Math.max(1e-4, railOhms + means.leadOhms());
    double wantedAmperes = Math.sqrt(WANTED_WATTS / Math.max(1e-4, railOhms));
    double level = roundedDown(Math.min(maxVolts, wantedAmperes * total));
    double limit = roundedUp(ROOM_ABOVE_CURRENT * level / total);
    if (limit > maxAmperes) {
      limit = maxAmperes;
      level = roundedUp(Math.min(level, ROOM_ABOVE_VOLTAGE * limit * total));
      level = Math.min(level, roundedDown(maxVolts));
    }
    if (level * limit > means.maxWatts()) {
      limit = means.maxWatts() / level;
      reasons.add(
          "The bench's " + Quantity.format(means.maxWatts(), Unit.WATT) + " hold the limit");
    }
    OperatingPoint point = OperatingPoint.of(level, limit, total);
    double fault = point.amperes() * point.amperes() * railOhms;
    double leads = point.amperes() * point.amperes() * means.leadOhms();
    if (point.constantCurrent()) {
      reasons.add(
          String.format(
              Locale.ROOT,
              "So low a rail pulls the supply into constant current: %s, of which the fault gets %s"
                  + " and the leads %s; if the short opens, at most %s appear",
              Quantity.format(point.amperes(), Unit.AMPERE),
              Quantity.format(fault, Unit.WATT),
              Quantity.format(leads, Unit.WATT),
              Quantity.format(level, Unit.VOLT)));
    } else {
      reasons.add(
          "The fault gets "
              + Quantity.format(fault, Unit.WATT)
              + " at "
              + Quantity.format(point.amperes(), Unit.AMPERE)
              + ", the leads waste "
              + Quantity.format(leads, Unit.WATT));
    }
    if (leads > fault) {
      cautions.add(
          "More power goes into the leads than into the fault: use shorter or thicker ones, and"
              + " measure at the board (4-wire)");
    }
    return new LimitProposal(
        level,
        limit,
        maxVolts,
        level * limit,
        fault,
        leads,
        point.constantCurrent(),
        reasons,
        cautions);
  }

  private record Cap(double value, String origin) {
    Cap and(double other, String otherOrigin) {
      return other < value ? new Cap(other, otherOrigin) : this;
    }
  }

  private static Cap voltCap(Board board, Rail rail, InjectionMeans means) {
    Cap cap =
        new Cap(UNKNOWN_RAIL_VOLTS, "the nominal voltage of " + rail.name() + " is not known");
    if (!Double.isNaN(rail.highestInjectionVolts())) {
      Cap stated =
          new Cap(rail.highestInjectionVolts(), "the board file allows that on " + rail.name());
      cap = Double.isNaN(rail.nominalVolts()) ? cap.and(stated.value(), stated.origin()) : stated;
    } else if (!Double.isNaN(rail.nominalVolts())) {
      cap =
          new Cap(
              SHARE_OF_NOMINAL * rail.nominalVolts(),
              "80 % of the nominal voltage of " + rail.name());
    }
    Optional<Bears> delicate = DelicateParts.on(board, rail).highestVolts();
    if (delicate.isPresent()) {
      cap = cap.and(delicate.get().value(), words(delicate.get()));
    }
    return cap.and(means.maxVolts(), "the bench");
  }

  private static Cap ampereCap(Board board, Rail rail, InjectionMeans means) {
    Cap cap =
        new Cap(means.leadAmperes(), "the leads' rating")
            .and(means.connectorAmperes(), "the clip's or connector's rating")
            .and(means.maxAmperes(), "the bench");
    Optional<Bears> delicate = DelicateParts.on(board, rail).mostAmperes();
    return delicate.isEmpty() ? cap : cap.and(delicate.get().value(), words(delicate.get()));
  }

  private static String words(Bears bears) {
    return bears.reference() + ", the most delicate part on it (" + bears.why() + ")";
  }

  private static List<String> cautions(Board board, Rail rail) {
    List<String> cautions = new ArrayList<>();
    TreeSet<String> joined = new TreeSet<>();
    for (Part part : board.partsOn(rail.name())) {
      PartKind kind = PartKind.of(part.reference());
      for (Rail other : board.rails()) {
        if (kind == PartKind.CHIP
            && !other.name().equals(rail.name())
            && board.isOn(part, other.name())) {
          joined.add(other.name() + " through " + part.reference());
        }
      }
    }
    if (!joined.isEmpty()) {
      cautions.add(
          "Current may reach "
              + joined.stream().limit(4).collect(java.util.stream.Collectors.joining(", "))
              + (joined.size() > 4 ? " and others" : "")
              + ": watch those rails too");
    }
    cautions.add("Batteries out, other supplies off, capacitors discharged before injecting");
    return cautions;
  }

  /** Down to two digits, so that a proposal never exceeds what it was made from. */
  static double roundedDown(double value) {
    double unit = unit(value);
    return Math.floor(value / unit + 1e-9) * unit;
  }

  static double roundedUp(double value) {
    double unit = unit(value);
    return Math.ceil(value / unit - 1e-9) * unit;
  }

  private static double unit(double value) {
    return Math.pow(10, Math.floor(Math.log10(Math.max(1e-6, value))) - 1);
  }
}
