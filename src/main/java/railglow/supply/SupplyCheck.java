package railglow.supply;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.LongConsumer;
import railglow.safety.StopLatch;
import railglow.time.MonotonicClock;
import railglow.time.Pause;
import railglow.units.Quantity;
import railglow.units.Unit;

/**
 * Tries every word a descriptor gives, with the output off and proven, so that a descriptor that
 * lies is found before it matters. The output is never switched on; level and limit are left at
 * their lowest.
 */
public final class SupplyCheck {
  private static final long RETRY_NANOS = 50_000_000;
  private static final int MOST_OLD_ERRORS = 32;

  /**
   * One thing tried.
   *
   * @param detail what came back, or what was wrong in the supply's own words
   */
  public record Item(String what, boolean works, String detail) {}

  /**
   * What was found.
   *
   * @param provenOff whether the output was proven off; if not, nothing else was tried
   * @param doubt why it was not; empty when it was
   */
  public record Outcome(boolean provenOff, String doubt, List<Item> items) {
    /** Whether everything works. */
    public boolean works() {
      return provenOff && items.stream().allMatch(Item::works);
    }
  }

  private interface Trial {
    String run() throws SupplyException;
  }

  private final Supply supply;
  private final MonotonicClock clock;
  private final LongConsumer pause;
  private final OffDrive drive;
  private final KeeperReports reports = new KeeperReports(SupplyListener.NONE, new StopLatch());
  private final List<Item> items = new ArrayList<>();

  SupplyCheck(Supply supply, MonotonicClock clock, LongConsumer pause) {
    this.supply = supply;
    this.clock = clock;
    this.pause = pause;
    this.drive = new OffDrive(supply, reports, clock);
  }

  /**
   * @param supply connected and identified, used by nobody else
   * @param patienceNanos for the proof of off
   */
  public static Outcome run(Supply supply, long patienceNanos, MonotonicClock clock) {
    return new SupplyCheck(supply, clock, Pause::nanos).run(patienceNanos);
  }

  Outcome run(long patienceNanos) {
    if (!provenOff(patienceNanos)) {
      return new Outcome(false, reports.doubt(), List.of());
    }
    SupplyDescriptor d = supply.descriptor();
    ChannelAbility ability = d.channel(supply.channel());
    attempt("error queue", this::emptied);
    attempt("identity", supply::identify);
    for (SensePoint point : List.of(SensePoint.BOARD, SensePoint.TERMINALS)) {
      if (d.commands().senseAt(point).isPresent()) {
        attempt("sensing at the " + point.name().toLowerCase(Locale.ROOT), () -> sensing(point));
      }
    }
    setting(
        "voltage",
        ability.volts().low(),
        ability.voltsStep(),
        Unit.VOLT,
        supply::setVolts,
        supply::voltsSetting);
    setting(
        "current limit",
        ability.amperes().low(),
        ability.amperesStep(),
        Unit.AMPERE,
        supply::setAmperes,
        supply::amperesSetting);
    if (d.overVoltage().isPresent()) {
      setting(
          "over-voltage protection",
          d.overVoltage().get().range().high(),
          d.overVoltage().get().step(),
          Unit.VOLT,
          supply::setOverVoltage,
          supply::overVoltageSetting);
    }
    if (d.overCurrent().isPresent()) {
      setting(
          "over-current protection",
          d.overCurrent().get().range().high(),
          d.overCurrent().get().step(),
          Unit.AMPERE,
          supply::setOverCurrent,
          supply::overCurrentSetting);
    }
    attempt("output switch read back", () -> switchSays());
    attempt("reading", this::reading);
    if (d.commands().clearTrips().isPresent()) {
      attempt(
          "clearing trips",
          () -> {
            supply.clearTrips();
            return "taken";
          });
    }
    d.timer().ifPresent(this::timer);
    boolean still = provenOff(patienceNanos);
    return new Outcome(still, still ? "" : reports.doubt(), List.copyOf(items));
  }

  private boolean provenOff(long patienceNanos) {
    long deadline = clock.nanos() + patienceNanos;
    do {
      try {
        if (drive.attempt(Double.NaN, () -> false)) {
          return true;
        }
      } catch (SupplyException e) {
        reports.state(railglow.observed.OutputState.UNKNOWN, e.getMessage(), clock.nanos());
      }
      pause.accept(RETRY_NANOS);
    } while (clock.nanos() - deadline < 0);
    return false;
  }

  private interface Setter {
    void set(double value) throws SupplyException;
  }

  private interface Setting {
    OptionalDouble get() throws SupplyException;
  }

  private void setting(
      String what, double value, double step, Unit unit, Setter setter, Setting setting) {
    attempt(
        what,
        () -> {
          setter.set(value);
          OptionalDouble said = setting.get();
          SettingReadBack.require(what, value, said, step, unit);
          return said.isPresent()
              ? "set to "
                  + Quantity.format(value, unit)
                  + ", reads back "
                  + Quantity.format(said.getAsDouble(), unit)
              : "set to " + Quantity.format(value, unit) + "; can't be read back";
        });
  }

  private String sensing(SensePoint point) throws SupplyException {
    supply.senseAt(point);
    return "taken";
  }

  private void timer(OutputTimer timer) {
    attempt(
        "supply's own watchdog",
        () -> {
          supply.armTimer(timer.seconds().high());
          supply.feedTimer();
          supply.disarmTimer();
          return "armed, fed and disarmed";
        });
  }

  private String switchSays() throws SupplyException {
    SwitchState said = supply.readSwitch();
    return said == SwitchState.NOT_TOLD ? "can't be asked" : "says " + said;
  }

  private String reading() throws SupplyException {
    ReadingDraft draft = new ReadingDraft();
    draft.clear();
    long start = clock.nanos();
    for (int part = 0; part < supply.readingExchanges(); part++) {
      supply.readPart(part, draft);
    }
    var reading = draft.finish(start, clock.nanos(), supply.descriptor().tellsRegulation(), false);
    return Quantity.format(reading.volts(), Unit.VOLT)
        + ", "
        + Quantity.format(reading.amperes(), Unit.AMPERE)
        + ", in "
        + Quantity.format((reading.endNanos() - reading.startNanos()) / 1e9, Unit.SECOND);
  }

  private String emptied() throws SupplyException {
    if (supply.descriptor().commands().errorQuery().isEmpty()) {
      return "there is none";
    }
    for (int i = 0; i <= MOST_OLD_ERRORS; i++) {
      if (supply.nextError().isEmpty()) {
        return i == 0 ? "empty" : i + " old entries taken out";
      }
    }
    throw new SupplyException(SupplyException.Kind.REFUSED, "it does not empty");
  }

  /** Tries, then asks for errors; after a failure the link is brought back in step. */
  private void attempt(String what, Trial trial) {
    try {
      String detail = trial.run();
      Optional<String> error = supply.nextError();
      items.add(new Item(what, error.isEmpty(), error.orElse(detail)));
    } catch (SupplyException e) {
      items.add(new Item(what, false, e.getMessage() + inItsOwnWords()));
    }
  }

  private String inItsOwnWords() {
    try {
      if (supply.isOutOfStep()) {
        supply.resynchronise();
      }
      return supply.nextError().map(error -> "; the supply says " + error).orElse("");
    } catch (SupplyException e) {
      return "; and then " + e.getMessage();
    }
  }
}
