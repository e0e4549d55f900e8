package railglow.board;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import railglow.units.Quantity;
import railglow.units.Unit;

/**
 * What the parts on a rail bear: limits the board file states, and ratings that values and packages
 * tell. The most delicate part rules. Pure.
 *
 * @param highestVolts empty when no part says anything
 * @param mostAmperes likewise
 */
public record DelicateParts(Optional<Bears> highestVolts, Optional<Bears> mostAmperes) {

  /**
   * What one part bears.
   *
   * @param value volts or amperes
   * @param reference of the part
   * @param why where the figure comes from, in words
   */
  public record Bears(double value, String reference, String why) {}

  /**
   * The parts with a pad on the rail, and those behind its inductors, fuses and sense resistors.
   */
  public static DelicateParts on(Board board, Rail rail) {
    RailReach reach = RailReach.of(board, rail.name());
    List<Bears> volts = new ArrayList<>();
    List<Bears> amperes = new ArrayList<>();
    for (PartLimit limit : board.care().partLimits()) {
      // A part whose nets are not known may be on this rail: its limit holds.
      boolean holds =
          board
              .part(limit.reference())
              .map(part -> part.nets().isEmpty() || reached(board, rail, reach, part))
              .orElse(true);
      if (holds) {
        volts.add(new Bears(limit.highestVolts(), limit.reference(), "board file"));
        amperes.add(new Bears(limit.mostAmperes(), limit.reference(), "board file"));
      }
    }
    for (Part part : board.parts()) {
      if (reached(board, rail, reach, part)) {
        rated(board, part, volts, amperes);
      }
    }
    return new DelicateParts(least(volts), least(amperes));
  }

  private static boolean reached(Board board, Rail rail, RailReach reach, Part part) {
    return board.isOn(part, rail.name()) || reach.feeds(part) != null;
  }

  private static void rated(Board board, Part part, List<Bears> volts, List<Bears> amperes) {
    switch (PartKind.of(part.reference())) {
      case CAPACITOR ->
          PartValue.ratedVolts(part.value())
              .ifPresent(v -> volts.add(new Bears(v, part.reference(), "printed in its value")));
      case FUSE, INDUCTOR ->
          PartValue.ratedAmperes(part.value())
              .ifPresent(a -> amperes.add(new Bears(a, part.reference(), "printed in its value")));
      case RESISTOR -> resistor(board, part, volts, amperes);
      default -> {}
    }
  }

  /** A resistor in the current's way bears sqrt(P/R) amperes; one to ground sqrt(P R) volts. */
  private static void resistor(Board board, Part part, List<Bears> volts, List<Bears> amperes) {
    double ohms = PartValue.ohms(part.value());
    double watts = PartValue.chipResistorWatts(part.packageName()).orElse(Double.POSITIVE_INFINITY);
    if (!(ohms > 0) || Double.isInfinite(ohms) || Double.isInfinite(watts)) {
      return;
    }
    String why = Quantity.format(watts, Unit.WATT) + " of a chip resistor of its size";
    if (part.nets().stream().anyMatch(net -> RailReach.isGround(board, net))) {
      volts.add(new Bears(Math.sqrt(watts * ohms), part.reference(), why));
    } else if (ohms < RailReach.LOW_OHMS) {
      amperes.add(new Bears(Math.sqrt(watts / ohms), part.reference(), why));
    }
  }

  private static Optional<Bears> least(List<Bears> all) {
    return all.stream()
        .filter(bears -> Double.isFinite(bears.value()))
        .min(Comparator.comparingDouble(Bears::value).thenComparing(Bears::reference));
  }
}
