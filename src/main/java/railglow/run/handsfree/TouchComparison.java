package railglow.run.handsfree;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import railglow.units.Quantity;
import railglow.units.Unit;

/**
 * The touches of a session side by side. Between points the one with the least resistance bounds
 * the rail from above, so what another shows beyond it lies on the way to the source, and the power
 * to the source is at most current squared times that bound. On the way lie copper and, where the
 * volts are not sensed at the board, the contact. Pure.
 *
 * @param touches in order
 * @param sensedAtBoard whether the volts are those at the pad, contact and leads excluded
 */
public record TouchComparison(List<TouchResult> touches, boolean sensedAtBoard) {
  /** More than this share of the rail's bound lost on the way spoils a point. */
  private static final double SPOILT = 0.1;

  /** From this share on it is worth saying that a point is farther off. */
  private static final double FARTHER = 0.005;

  private static final String WAY = "on the way";

  /** A contact whose resistance swings by more than this share was not held. */
  private static final double SWING = 0.3;

  public TouchComparison {
    touches = List.copyOf(touches);
  }

  /** The least resistance at any point; NaN when nothing was measured. */
  public double railOhmsAtMost() {
    return touches.stream()
        .filter(TouchResult::isMeasured)
        .mapToDouble(TouchResult::ohms)
        .min()
        .orElse(Double.NaN);
  }

  /** Power to the source behind a point, at most; NaN when not measured. */
  public double sourceWatts(TouchResult touch) {
    return watts(touch, railOhmsAtMost());
  }

  private static double watts(TouchResult touch, double ohms) {
    return touch.onAmperes() * touch.onAmperes() * ohms;
  }

  /** What lies on the way from a point beyond what lies there from the best one. */
  public double extraOhms(TouchResult touch) {
    return touch.ohms() - railOhmsAtMost();
  }

  /** The point that gave most power to the source. */
  public Optional<TouchResult> best() {
    return touches.stream()
        .filter(TouchResult::isMeasured)
        .max(Comparator.comparingDouble(this::sourceWatts));
  }

  /** Table and conclusions. */
  public List<String> text() {
    List<String> lines = new ArrayList<>();
    int way = WAY.length();
    for (TouchResult touch : touches) {
      way = Math.max(way, contact(touch).length());
    }
    lines.add(
        "  point           at the probe                     to the source   "
            + padded(WAY, way)
            + "  found");
    for (TouchResult touch : touches) {
      lines.add(row(touch, way));
    }
    if (best().isPresent()) {
      lines.add("");
    }
    lines.addAll(conclusions());
    return lines;
  }

  /** Sentences that compare the points; empty when nothing was measured. */
  public List<String> conclusions() {
    List<String> lines = new ArrayList<>();
    best().ifPresent(best -> conclude(lines, best));
    return lines;
  }

  /** What was found at a point, in words. */
  public String found(TouchResult touch) {
    return touch.where().isEmpty() ? verdict(touch) : touch.where() + ", " + swing(touch);
  }

  /** The power to the source from a point, in words. */
  public String power(TouchResult touch) {
    return touch.isMeasured() ? Quantity.format(sourceWatts(touch), Unit.WATT) : "-";
  }

  private static String padded(String text, int length) {
    return text + " ".repeat(length - text.length());
  }

  private String row(TouchResult touch, int way) {
    boolean measured = touch.isMeasured();
    return String.format(
            Locale.ROOT,
            "  %-2d %-12s %-10s %-10s %-10s  %-14s  %s  %s",
            touch.number(),
            touch.label(),
            measured ? Quantity.format(touch.onVolts(), Unit.VOLT) : "-",
            measured ? Quantity.format(touch.onAmperes(), Unit.AMPERE) : "-",
            measured ? Quantity.format(touch.ohms(), Unit.OHM) : "-",
            power(touch),
            padded(contact(touch), way),
            found(touch))
        .stripTrailing();
  }

  /** What lies on the way from a point, in words. */
  public String contact(TouchResult touch) {
    if (!touch.isMeasured()) {
      return "-";
    }
    double extra = extraOhms(touch);
    boolean none = extra < FARTHER * railOhmsAtMost();
    String way = none ? "least" : "+" + Quantity.format(extra, Unit.OHM);
    return touch.felt().isContactKnown() ? way + ", contact " + touch.felt().contactText() : way;
  }

  private static String verdict(TouchResult touch) {
    return touch.verdict().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  private static String swing(TouchResult touch) {
    return touch.unit().equals("K")
        ? Quantity.format(touch.swingKelvin(), Unit.KELVIN)
        : String.format(Locale.ROOT, "%.2f %s", touch.swingKelvin(), touch.unit());
  }

  private void conclude(List<String> lines, TouchResult best) {
    lines.add(
        "Best       "
            + best.label()
            + " gave most power to the source: at most "
            + Quantity.format(sourceWatts(best), Unit.WATT));
    for (TouchResult touch : touches) {
      if (touch.isMeasured()) {
        concludeWay(lines, touch, best);
        concludeContact(lines, touch);
      }
    }
  }

  private void concludeWay(List<String> lines, TouchResult touch, TouchResult best) {
    double lost = extraOhms(touch) / railOhmsAtMost();
    boolean spoilt = lost > SPOILT;
    if (!spoilt && lost < FARTHER) {
      return;
    }
    String what = sensedAtBoard ? "of copper" : spoilt ? "in the way" : "of contact or copper";
    lines.add(
        String.format(
            Locale.ROOT,
            "%s%s: %s more %s than at the best point, %.0f %% less power to the source than at %s%s",
            spoilt ? "Spoilt     " : "Farther    ",
            touch.label(),
            Quantity.format(extraOhms(touch), Unit.OHM),
            what,
            100 * (1 - sourceWatts(touch) / sourceWatts(best)),
            best.label(),
            spoilt && !sensedAtBoard ? ownHeat(touch) : ""));
  }

  /** What the way takes is heat too, and may be found as a place of its own. */
  private String ownHeat(TouchResult touch) {
    return "; the way took "
        + Quantity.format(watts(touch, extraOhms(touch)), Unit.WATT)
        + ", so heat where the probe sat may be its own contact's";
  }

  private void concludeContact(List<String> lines, TouchResult touch) {
    ContactShare felt = touch.felt();
    if (felt.isContactKnown()
        && felt.contactOhms() - felt.withinOhms() > SPOILT * railOhmsAtMost()) {
      lines.add(
          "Contact    "
              + touch.label()
              + ": the contact alone had "
              + felt.contactText()
              + " and took "
              + Quantity.format(watts(touch, felt.contactOhms()), Unit.WATT)
              + "; clean the pad or press harder");
    }
    if (touch.highestOhms() - touch.lowestOhms() > SWING * touch.ohms()) {
      lines.add(
          "Unsteady   "
              + touch.label()
              + ": the resistance swung from "
              + Quantity.format(touch.lowestOhms(), Unit.OHM)
              + " to "
              + Quantity.format(touch.highestOhms(), Unit.OHM)
              + " while ON");
    }
  }
}
