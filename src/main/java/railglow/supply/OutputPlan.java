package railglow.supply;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import railglow.safety.Refusal;
import railglow.units.Unit;

/**
 * What the supply is set to before the first pulse.
 *
 * @param highestVolts the highest level of the whole run
 * @param limitAmperes current limit
 * @param overVoltageVolts the supply's own protection, just outside the plan; empty if it has none
 * @param overCurrentAmperes the supply's own protection, just outside the plan; empty if it has
 *     none
 * @param timerSeconds the supply's own watchdog; empty if it has none
 * @param probed whether a probe in a hand makes and breaks the contact while the output is on; only
 *     at a level that harms nothing
 * @param sense where the voltage is regulated and measured
 */
public record OutputPlan(
    double highestVolts,
    double limitAmperes,
    OptionalDouble overVoltageVolts,
    OptionalDouble overCurrentAmperes,
    OptionalDouble timerSeconds,
    boolean probed,
    SensePoint sense) {
  /** The highest level a probed plan may have: below what makes any junction conduct. */
  public static final double HARMLESS_VOLTS = 0.1;

  /** The highest current limit a probed plan may have. */
  public static final double HARMLESS_AMPERES = 0.1;

  private static final double MARGIN = 0.1;
  private static final double LEAST_MARGIN_VOLTS = 0.2;
  private static final double LEAST_MARGIN_AMPERES = 0.05;
  private static final double WANTED_TIMER_SECONDS = 2;

  public OutputPlan {
    if (probed && !(highestVolts <= HARMLESS_VOLTS && limitAmperes <= HARMLESS_AMPERES)) {
      throw new IllegalArgumentException(
          highestVolts + " V and " + limitAmperes + " A are too much for a probe in the air");
    }
  }

  /** For a load that stays connected. */
  public OutputPlan(
      double highestVolts,
      double limitAmperes,
      OptionalDouble overVoltageVolts,
      OptionalDouble overCurrentAmperes,
      OptionalDouble timerSeconds) {
    this(
        highestVolts,
        limitAmperes,
        overVoltageVolts,
        overCurrentAmperes,
        timerSeconds,
        false,
        SensePoint.AS_WIRED);
  }

  /** The same plan with the voltage sensed elsewhere. */
  public OutputPlan sensedAt(SensePoint point) {
    return new OutputPlan(
        highestVolts,
        limitAmperes,
        overVoltageVolts,
        overCurrentAmperes,
        timerSeconds,
        probed,
        point);
  }

  /**
   * The plan for feeling the contact of a probe; everything else as in {@link #of}.
   *
   * @throws IllegalArgumentException above the harmless level or limit
   */
  public static OutputPlan probing(double volts, double limitAmperes, SupplyDescriptor supply) {
    OutputPlan plan = of(volts, limitAmperes, supply);
    return new OutputPlan(
        plan.highestVolts,
        plan.limitAmperes,
        plan.overVoltageVolts,
        plan.overCurrentAmperes,
        plan.timerSeconds,
        true,
        plan.sense);
  }

  /**
   * Puts the supply's own protection just outside the plan: a tenth above it, at least 0.2 V and 50
   * mA, rounded up to the supply's own steps and raised to the lowest it can be set to.
   *
   * @param channel from 1
   */
  public static OutputPlan of(double highestVolts, double limitAmperes, SupplyDescriptor supply) {
    return new OutputPlan(
        highestVolts,
        limitAmperes,
        outside(supply.overVoltage(), highestVolts, LEAST_MARGIN_VOLTS),
        outside(supply.overCurrent(), limitAmperes, LEAST_MARGIN_AMPERES),
        supply
            .timer()
            .map(t -> OptionalDouble.of(clamp(WANTED_TIMER_SECONDS, t)))
            .orElse(OptionalDouble.empty()));
  }

  /** Protection levels that this supply can't be set to; found before anything is opened. */
  public List<Refusal> refusals(SupplyDescriptor supply) {
    List<Refusal> refusals = new ArrayList<>();
    supply
        .overVoltage()
        .ifPresent(
            level ->
                above(
                    refusals,
                    supply,
                    "over-voltage protection",
                    level,
                    overVoltageVolts,
                    Unit.VOLT));
    supply
        .overCurrent()
        .ifPresent(
            level ->
                above(
                    refusals,
                    supply,
                    "over-current protection",
                    level,
                    overCurrentAmperes,
                    Unit.AMPERE));
    return refusals;
  }

  private static OptionalDouble outside(
      java.util.Optional<ProtectionLevel> protection, double planned, double leastMargin) {
    if (protection.isEmpty()) {
      return OptionalDouble.empty();
    }
    ProtectionLevel level = protection.get();
    double wanted = planned + Math.max(leastMargin, MARGIN * planned);
    double stepped =
        level.step() > 0 ? Math.ceil(wanted / level.step() - 1e-9) * level.step() : wanted;
    return OptionalDouble.of(Math.max(stepped, level.range().low()));
  }

  private static double clamp(double seconds, OutputTimer timer) {
    return Math.min(Math.max(seconds, timer.seconds().low()), timer.seconds().high());
  }

  private static void above(
      List<Refusal> refusals,
      SupplyDescriptor supply,
      String what,
      ProtectionLevel level,
      OptionalDouble planned,
      Unit unit) {
    if (planned.isPresent() && planned.getAsDouble() > level.range().high()) {
      refusals.add(
          new Refusal(
              what + " just outside the plan",
              planned.getAsDouble(),
              level.range().high(),
              unit,
              "supply " + supply.name(),
              "lower the level or the current limit in the sequence"));
    }
  }
}
