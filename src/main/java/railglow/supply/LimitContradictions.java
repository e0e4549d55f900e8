package railglow.supply;

import java.util.ArrayList;
import java.util.List;
import railglow.safety.Bound;
import railglow.safety.Envelope;
import railglow.units.Quantity;
import railglow.units.Unit;

/** Limits of a bench that no run with its supply could ever keep, both sides named. Pure. */
public final class LimitContradictions {
  private LimitContradictions() {}

  /**
   * One sentence for each; empty when there are none.
   *
   * @param limits of the bench
   * @param channel from 1
   */
  public static List<String> of(Envelope limits, SupplyDescriptor supply, int channel) {
    List<String> found = new ArrayList<>();
    double interval = supply.wire().readingIntervalNanos() / 1e9;
    Bound age = limits.maxReadingAgeSeconds();
    if (age.value() <= interval) {
      found.add(
          said("a reading may be at most", age.value(), Unit.SECOND, age.origin())
              + said(", but one comes every", interval, Unit.SECOND, "supply " + supply.name())
              + ": raise 'reading-age' or lower 'reading-interval'");
    }
    supply
        .timer()
        .filter(timer -> timer.seconds().high() <= 2 * interval)
        .ifPresent(
            timer ->
                found.add(
                    "the supply's own watchdog waits at most "
                        + Quantity.format(timer.seconds().high(), Unit.SECOND)
                        + said(
                            ", but a reading comes only every",
                            interval,
                            Unit.SECOND,
                            "supply " + supply.name())
                        + ": it would act in every run; lower 'reading-interval'"));
    ChannelAbility ability = supply.channel(channel);
    below(found, "voltage", limits.maxVolts(), ability.volts().low(), Unit.VOLT, supply);
    below(found, "current", limits.maxAmperes(), ability.amperes().low(), Unit.AMPERE, supply);
    return List.copyOf(found);
  }

  private static void below(
      List<String> found,
      String what,
      Bound most,
      double lowest,
      Unit unit,
      SupplyDescriptor supply) {
    if (most.value() < lowest) {
      found.add(
          said("the " + what + " may be at most", most.value(), unit, most.origin())
              + said(", but can't be set below", lowest, unit, "supply " + supply.name())
              + ": use another supply, or raise the limit if the board allows it");
    }
  }

  private static String said(String what, double value, Unit unit, String origin) {
    return what + " " + Quantity.format(value, unit) + " (" + origin + ")";
  }
}
