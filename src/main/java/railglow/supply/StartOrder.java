package railglow.supply;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import railglow.observed.Trip;
import railglow.safety.Protection;
import railglow.units.Quantity;
import railglow.units.Unit;

/**
 * What is done before the first permit, as actions of one exchange each, so that a stop is noticed
 * between any two.
 */
final class StartOrder {
  /** One exchange of the start. */
  interface Action {
    /**
     * Makes the exchange.
     *
     * @return whether the action is done; else it wants to be run again
     * @throws SupplyException when the supply did not do as told, with its own words if it has some
     */
    boolean run() throws SupplyException;
  }

  private static final int MOST_OLD_ERRORS = 32;
  private final Supply supply;
  private final OutputPlan plan;
  private String lastSent = "";
  private int oldErrors;

  StartOrder(Supply supply, OutputPlan plan) {
    this.supply = supply;
    this.plan = plan;
  }

  /** Whether trips must be cleared: one has acted, or the supply can't say. */
  boolean mustClear(Set<Trip> trips) {
    boolean canClear = supply.descriptor().commands().clearTrips().isPresent();
    boolean blind = supply.descriptor().missing().contains(Protection.TRIP_STATUS);
    return canClear && (blind || !trips.isEmpty());
  }

  /**
   * First half, with the output proven off: error queue emptied, and trips cleared at the lowest
   * level. Clearing a trip may bring the former output state back, so off must be sent and proven
   * again.
   */
  List<Action> clearing(boolean trips) {
    List<Action> actions = new ArrayList<>();
    actions.add(this::dropOldError);
    if (trips) {
      ChannelAbility ability = supply.descriptor().channel(supply.channel());
      set(actions, "voltage", ability.volts().low(), Unit.VOLT, supply::setVolts);
      actions.add(
          () -> {
            lastSent = "reset of its trips";
            supply.clearTrips();
            return true;
          });
      actions.add(this::refuseNewError);
    }
    return actions;
  }

  /**
   * Second half, with the output off: current limit, level, the supply's own protection and
   * watchdog set and read back, and the error queue looked at after each.
   */
  List<Action> setting() {
    ChannelAbility ability = supply.descriptor().channel(supply.channel());
    List<Action> actions = new ArrayList<>();
    if (plan.sense() != SensePoint.AS_WIRED) {
      actions.add(
          () -> {
            lastSent = "sensing at the " + plan.sense().name().toLowerCase(Locale.ROOT);
            supply.senseAt(plan.sense());
            return true;
          });
      actions.add(this::refuseNewError);
    }
    set(actions, "current limit", plan.limitAmperes(), Unit.AMPERE, supply::setAmperes);
    check(
        actions,
        "current limit",
        plan.limitAmperes(),
        ability.amperesStep(),
        Unit.AMPERE,
        supply::amperesSetting);
    set(actions, "voltage", plan.highestVolts(), Unit.VOLT, supply::setVolts);
    check(
        actions,
        "voltage",
        plan.highestVolts(),
        ability.voltsStep(),
        Unit.VOLT,
        supply::voltsSetting);
    protection(
        actions,
        "over-voltage protection",
        plan.overVoltageVolts(),
        supply.descriptor().overVoltage(),
        Unit.VOLT,
        supply::setOverVoltage,
        supply::overVoltageSetting);
    protection(
        actions,
        "over-current protection",
        plan.overCurrentAmperes(),
        supply.descriptor().overCurrent(),
        Unit.AMPERE,
        supply::setOverCurrent,
        supply::overCurrentSetting);
    if (plan.timerSeconds().isPresent()) {
      set(
          actions,
          "supply's own watchdog",
          plan.timerSeconds().getAsDouble(),
          Unit.SECOND,
          supply::armTimer);
    }
    return actions;
  }

  private interface Setter {
    void set(double value) throws SupplyException;
  }

  private interface Setting {
    OptionalDouble get() throws SupplyException;
  }

  private void protection(
      List<Action> actions,
      String what,
      OptionalDouble value,
      Optional<ProtectionLevel> level,
      Unit unit,
      Setter setter,
      Setting setting) {
    if (value.isPresent() && level.isPresent()) {
      set(actions, what, value.getAsDouble(), unit, setter);
      check(actions, what, value.getAsDouble(), level.get().step(), unit, setting);
    }
  }

  private void set(List<Action> actions, String what, double value, Unit unit, Setter setter) {
    actions.add(
        () -> {
          lastSent = what + " of " + Quantity.format(value, unit);
          setter.set(value);
          return true;
        });
    actions.add(this::refuseNewError);
  }

  private void check(
      List<Action> actions, String what, double value, double step, Unit unit, Setting setting) {
    actions.add(
        () -> {
          SettingReadBack.require(what, value, setting.get(), step, unit);
          return true;
        });
  }

  private boolean dropOldError() throws SupplyException {
    if (supply.nextError().isEmpty()) {
      return true;
    }
    if (++oldErrors > MOST_OLD_ERRORS) {
      throw new SupplyException(
          SupplyException.Kind.REFUSED,
          "the supply's error queue does not empty: more than " + MOST_OLD_ERRORS + " entries");
    }
    return false;
  }

  private boolean refuseNewError() throws SupplyException {
    Optional<String> error = supply.nextError();
    if (error.isPresent()) {
      throw new SupplyException(
          SupplyException.Kind.REFUSED, "the supply refused the " + lastSent + ": " + error.get());
    }
    return true;
  }
}
