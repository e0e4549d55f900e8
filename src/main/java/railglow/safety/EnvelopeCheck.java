package railglow.safety;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import railglow.pulse.Timeline;
import railglow.units.Unit;

/**
 * Compares a timeline with all limits before anything is opened. It only ever refuses; it never
 * changes a value to fit. Pure.
 */
public final class EnvelopeCheck {
  /**
   * A sequence that can put more than this into the board is energetic. Common practice, no
   * published source: a quarter of a watt is the rating of a small chip resistor at 70 degC, and a
   * fault of several ohms at 1 V stays below it.
   */
  public static final double ENERGETIC_ABOVE_WATTS = 0.25;

  private static final double SAME = 1e-9;

  private EnvelopeCheck() {}

  /**
   * Every reason why the timeline may not run; empty when it may.
   *
   * @param accepted keys of {@link Protection} whose absence the bench file accepts by name
   */
  public static List<Refusal> refusals(
      Timeline timeline, Envelope envelope, SupplyFacts supply, Set<String> accepted) {
    WorstCase worst = WorstCase.of(timeline);
    List<Refusal> refusals = new ArrayList<>();
    atMost(refusals, "injected voltage", worst.volts(), envelope.maxVolts(), Unit.VOLT);
    atMost(refusals, "current limit", worst.amperes(), envelope.maxAmperes(), Unit.AMPERE);
    atMost(refusals, "worst-case power", worst.watts(), envelope.maxWatts(), Unit.WATT);
    atMost(refusals, "worst-case energy", worst.joules(), envelope.maxJoules(), Unit.JOULE);
    supplyRange(refusals, worst, supply);
    missingProtection(refusals, worst, supply, accepted);
    return List.copyOf(refusals);
  }

  /** Whether missing protection matters for this timeline. */
  public static boolean isEnergetic(WorstCase worst) {
    return !(worst.watts() <= ENERGETIC_ABOVE_WATTS * (1 + SAME));
  }

  private static void atMost(
      List<Refusal> refusals, String what, double asked, Bound bound, Unit unit) {
    if (!(asked <= bound.value() * (1 + SAME))) {
      refusals.add(
          new Refusal(what, asked, bound.value(), unit, bound.origin(), advice(unit, bound)));
    }
  }

  private static String advice(Unit unit, Bound bound) {
    return switch (unit) {
      case VOLT -> "lower 'level' in the sequence";
      case AMPERE -> "lower 'current-limit' in the sequence";
      case WATT -> "lower 'level' or 'current-limit' in the sequence";
      default -> "fewer or shorter cycles, a lower level, or another limit in " + bound.origin();
    };
  }

  private static void supplyRange(List<Refusal> refusals, WorstCase worst, SupplyFacts supply) {
    String origin = supply.name();
    atMost(
        refusals,
        "injected voltage",
        worst.volts(),
        new Bound(supply.volts().high(), origin),
        Unit.VOLT);
    atMost(
        refusals,
        "current limit",
        worst.amperes(),
        new Bound(supply.amperes().high(), origin),
        Unit.AMPERE);
    atMost(
        refusals,
        "worst-case power",
        worst.watts(),
        new Bound(supply.maxWatts(), origin),
        Unit.WATT);
    atLeast(
        refusals,
        "injected voltage",
        worst.volts(),
        Math.max(supply.volts().low(), supply.voltsStep()),
        Unit.VOLT,
        origin);
    atLeast(
        refusals,
        "current limit",
        worst.amperes(),
        Math.max(supply.amperes().low(), supply.amperesStep()),
        Unit.AMPERE,
        origin);
  }

  private static void atLeast(
      List<Refusal> refusals, String what, double asked, double low, Unit unit, String origin) {
    if (!(asked >= low * (1 - SAME))) {
      refusals.add(
          Refusal.below(
              what, asked, low, unit, origin, "this supply can't hold so little; raise it"));
    }
  }

  private static void missingProtection(
      List<Refusal> refusals, WorstCase worst, SupplyFacts supply, Set<String> accepted) {
    if (!isEnergetic(worst)) {
      return;
    }
    for (Protection protection : Protection.values()) {
      if (protection.isDemanded()
          && supply.missing().contains(protection)
          && !accepted.contains(protection.key())) {
        refusals.add(
            new Refusal(
                "worst-case power without " + protection.key(),
                worst.watts(),
                ENERGETIC_ABOVE_WATTS,
                Unit.WATT,
                supply.name() + " (" + protection.without() + ")",
                "use a supply that has it, or accept its absence by name in the bench file:"
                    + " accepts-missing: ["
                    + protection.key()
                    + "]"));
      }
    }
  }
}
