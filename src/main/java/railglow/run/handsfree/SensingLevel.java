package railglow.run.handsfree;

import java.util.ArrayList;
import java.util.List;
import railglow.safety.Bound;
import railglow.safety.Envelope;
import railglow.safety.Refusal;
import railglow.supply.ChannelAbility;
import railglow.supply.OutputPlan;
import railglow.units.Unit;

/**
 * What the supply holds while the probe is in the air or being set down.
 *
 * @param volts level
 * @param amperes current limit
 */
public record SensingLevel(double volts, double amperes) {
  /** Far below what makes a silicon junction conduct, so that only a path of ohms is felt. */
  public static final double USUAL_VOLTS = 0.05;

  public static final double USUAL_AMPERES = 0.02;

  /** Never more than this share of what the rail may be given. */
  private static final double SHARE_OF_LIMIT = 0.1;

  private static final String HARMLESS = "what is harmless in the air";

  /** The usual one, or a tenth of the envelope's limits where that is less. */
  public static SensingLevel within(Envelope envelope) {
    return new SensingLevel(
        Math.min(USUAL_VOLTS, SHARE_OF_LIMIT * envelope.maxVolts().value()),
        Math.min(USUAL_AMPERES, SHARE_OF_LIMIT * envelope.maxAmperes().value()));
  }

  /**
   * Every reason why this may not be held; empty when it may. Never changed to fit.
   *
   * @param supply name, as the origin of its limits
   */
  public List<Refusal> refusals(Envelope envelope, ChannelAbility channel, String supply) {
    List<Refusal> refusals = new ArrayList<>();
    Bound harmlessVolts = new Bound(OutputPlan.HARMLESS_VOLTS, HARMLESS);
    Bound harmlessAmperes = new Bound(OutputPlan.HARMLESS_AMPERES, HARMLESS);
    atMost(refusals, "sensing voltage", volts, harmlessVolts, Unit.VOLT);
    atMost(refusals, "sensing current limit", amperes, harmlessAmperes, Unit.AMPERE);
    atMost(refusals, "sensing voltage", volts, envelope.maxVolts(), Unit.VOLT);
    atMost(refusals, "sensing current limit", amperes, envelope.maxAmperes(), Unit.AMPERE);
    atMost(refusals, "sensing power", volts * amperes, envelope.maxWatts(), Unit.WATT);
    atLeast(refusals, "sensing voltage", volts, channel.volts().low(), Unit.VOLT, supply);
    atLeast(refusals, "sensing voltage", volts, channel.voltsStep(), Unit.VOLT, supply);
    atLeast(refusals, "sensing current limit", amperes, lowest(channel), Unit.AMPERE, supply);
    return List.copyOf(refusals);
  }

  /** This level as what the supply is set to. */
  public OutputPlan plan(railglow.supply.SupplyDescriptor supply) {
    return OutputPlan.probing(volts, amperes, supply);
  }

  private static double lowest(ChannelAbility channel) {
    return Math.max(channel.amperes().low(), channel.amperesStep());
  }

  private static void atMost(
      List<Refusal> refusals, String what, double asked, Bound bound, Unit unit) {
    if (!(asked > 0 && asked <= bound.value())) {
      refusals.add(
          new Refusal(what, asked, bound.value(), unit, bound.origin(), "lower it, with its unit"));
    }
  }

  private static void atLeast(
      List<Refusal> refusals, String what, double asked, double low, Unit unit, String origin) {
    if (!(asked >= low)) {
      refusals.add(
          Refusal.below(what, asked, low, unit, origin, "this supply can't hold so little"));
    }
  }
}
