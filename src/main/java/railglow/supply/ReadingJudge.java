package railglow.supply;

import java.util.Optional;
import java.util.Set;
import railglow.observed.Regulation;
import railglow.observed.SupplyReading;
import railglow.safety.Bound;
import railglow.safety.Envelope;
import railglow.safety.StopCause;
import railglow.units.Quantity;
import railglow.units.Unit;

/**
 * Judges one reading by what was commanded and by the envelope. Pure; every value that can't be
 * judged is a breach.
 *
 * <p>A measured value is over a limit when it is so by more than its meter's stated error: the
 * asked values were compared with the limits exactly, before the run.
 */
public class ReadingJudge {
  /** SCPI-99 Vol 1, 7.2.1: 9.9E37 is infinity, 9.91E37 is not a number. */
  public static final double NOT_A_MEASUREMENT = 9.9e37;

  /** An output that regulates stays within this share of its set value. */
  private static final double REGULATION_SHARE = 0.05;

  private static final double REGULATION_VOLTS = 0.03;
  private final Envelope envelope;
  private final ChannelAbility channel;
  private final long settleNanos;

  /**
   * @param settleNanos after a confirmed change: until then neither regulation nor the fall of the
   *     current is judged
   */
  public ReadingJudge(Envelope envelope, ChannelAbility channel, long settleNanos) {
    this.envelope = envelope;
    this.channel = channel;
    this.settleNanos = settleNanos;
  }

  /**
   * The first breach of this reading.
   *
   * @param joules spent so far in this run
   * @param nowNanos when the judging is done
   */
  public Optional<Breach> judge(
      SupplyReading reading, Commanded commanded, double joules, long nowNanos) {
    Breach breach = notAMeasurement(reading);
    breach = breach != null ? breach : stale(reading, nowNanos);
    breach = breach != null ? breach : tripped(reading);
    breach = breach != null ? breach : aboveLimits(reading, commanded, joules);
    breach = breach != null ? breach : notAsCommanded(reading, commanded);
    if (breach == null && reading.startNanos() - commanded.sinceNanos() >= settleNanos) {
      breach = commanded.on() ? badRegulation(reading, commanded) : currentWhileOff(reading);
    }
    return Optional.ofNullable(breach);
  }

  /**
   * Judges readings nobody made, so that a first real breach finds every class loaded: a run stops
   * once, and that once must not be the slow first time.
   */
  void rehearse(long nowNanos) {
    Commanded on = new Commanded(true, 1, 1, nowNanos, Regulation.CONSTANT_VOLTAGE, Double.NaN);
    for (double amperes : new double[] {0.1, 100, Double.NaN}) {
      for (Regulation regulation : Regulation.values()) {
        judge(
            new SupplyReading(
                nowNanos + settleNanos,
                nowNanos + settleNanos,
                0.1,
                amperes,
                true,
                regulation,
                Set.of()),
            on,
            0,
            nowNanos + settleNanos);
      }
    }
  }

  /** Whether the reading came late enough after the last change to tell the regulation. */
  public boolean isSettled(SupplyReading reading, Commanded commanded) {
    return reading.startNanos() - commanded.sinceNanos() >= settleNanos;
  }

  /** Whether a number is a measurement at all. */
  public static boolean isMeasurement(double value) {
    return Math.abs(value) < NOT_A_MEASUREMENT;
  }

  /** The most the meter may show with no current flowing. */
  public double zeroAmperes() {
    return channel.amperesError().at(0);
  }

  private static Breach notAMeasurement(SupplyReading reading) {
    if (!isMeasurement(reading.volts())) {
      return new Breach(
          StopCause.READING_NOT_A_NUMBER,
          "the supply gave " + reading.volts() + " as its voltage; that is no measurement");
    }
    if (!isMeasurement(reading.amperes())) {
      return new Breach(
          StopCause.READING_NOT_A_NUMBER,
          "the supply gave " + reading.amperes() + " as its current; that is no measurement");
    }
    return null;
  }

  private Breach stale(SupplyReading reading, long nowNanos) {
    double ageSeconds = (nowNanos - reading.startNanos()) / 1e9;
    Bound most = envelope.maxReadingAgeSeconds();
    return ageSeconds > most.value()
        ? over(StopCause.READINGS_STALE, "age of the reading", ageSeconds, most, Unit.SECOND)
        : null;
  }

  private static Breach tripped(SupplyReading reading) {
    return reading.trips().isEmpty()
        ? null
        : new Breach(
            StopCause.SUPPLY_TRIPPED,
            "the supply's own protection has acted: " + TripWords.of(reading.trips()));
  }

  private Breach aboveLimits(SupplyReading reading, Commanded commanded, double joules) {
    double volts = Math.abs(reading.volts());
    double amperes = Math.abs(reading.amperes());
    double voltsError = channel.voltsError().at(volts);
    double amperesError = channel.amperesError().at(amperes);
    Bound ownVolts =
        new Bound(
            commanded.levelVolts() * (1 + REGULATION_SHARE) + REGULATION_VOLTS,
            "the set level " + Quantity.format(commanded.levelVolts(), Unit.VOLT) + " and 5 %");
    Bound ownAmperes =
        new Bound(
            commanded.limitAmperes() * (1 + REGULATION_SHARE),
            "the supply's current limit "
                + Quantity.format(commanded.limitAmperes(), Unit.AMPERE)
                + " and 5 %");
    Bound mostVolts = envelope.maxVolts().and(ownVolts);
    Bound mostAmperes = envelope.maxAmperes().and(ownAmperes);
    if (amperes - amperesError > mostAmperes.value()) {
      return over(
          StopCause.CURRENT_ABOVE_LIMIT, "current", reading.amperes(), mostAmperes, Unit.AMPERE);
    }
    if (volts - voltsError > mostVolts.value()) {
      return over(StopCause.VOLTAGE_ABOVE_LIMIT, "voltage", reading.volts(), mostVolts, Unit.VOLT);
    }
    double wattsError = volts * amperesError + amperes * voltsError;
    if (volts * amperes - wattsError > envelope.maxWatts().value()) {
      return over(
          StopCause.POWER_ABOVE_LIMIT, "power", reading.watts(), envelope.maxWatts(), Unit.WATT);
    }
    if (joules > envelope.maxJoules().value()) {
      return over(StopCause.ENERGY_ABOVE_LIMIT, "energy", joules, envelope.maxJoules(), Unit.JOULE);
    }
    return null;
  }

  private static Breach notAsCommanded(SupplyReading reading, Commanded commanded) {
    if (reading.outputOn() == commanded.on()) {
      return null;
    }
    return new Breach(
        StopCause.OUTPUT_NOT_AS_COMMANDED,
        commanded.on()
            ? "the output was commanded on, but the supply says it is off"
            : "the output was commanded off, but the supply says it is on");
  }

  private Breach currentWhileOff(SupplyReading reading) {
    Bound most = new Bound(zeroAmperes(), "the meter's error with the output off");
    return Math.abs(reading.amperes()) > most.value()
        ? over(
            StopCause.CURRENT_WHILE_OFF,
            "current with the output off",
            reading.amperes(),
            most,
            Unit.AMPERE)
        : null;
  }

  private Breach badRegulation(SupplyReading reading, Commanded commanded) {
    Regulation seen = reading.regulation();
    if (seen == Regulation.UNREGULATED || seen == Regulation.NONE) {
      return new Breach(
          StopCause.UNEXPECTED_REGULATION,
          "the output is on, but the supply says it holds neither its voltage nor its current");
    }
    boolean charging =
        seen == Regulation.CONSTANT_CURRENT && reading.volts() > commanded.chargingAboveVolts();
    if (commanded.expected() != Regulation.NOT_REPORTED
        && seen != commanded.expected()
        && !charging
        && loadIsFixed()) {
      return new Breach(
          StopCause.UNEXPECTED_REGULATION,
          "the supply went from "
              + words(commanded.expected())
              + " to "
              + words(seen)
              + " at "
              + Quantity.format(reading.volts(), Unit.VOLT)
              + " and "
              + Quantity.format(reading.amperes(), Unit.AMPERE)
              + " with an unchanged setting");
    }
    return holdsNeither(reading, commanded);
  }

  /** Whether the load stays as it is while the setting does. */
  boolean loadIsFixed() {
    return true;
  }

  /**
   * An output that is on holds its level or its current limit; one that holds neither is wrong.
   *
   * @return null when all is well
   */
  Breach holdsNeither(SupplyReading reading, Commanded commanded) {
    double voltsShort = commanded.levelVolts() - reading.volts();
    double voltsAllowed =
        REGULATION_SHARE * commanded.levelVolts()
            + REGULATION_VOLTS
            + channel.voltsError().at(commanded.levelVolts());
    double amperesShort = commanded.limitAmperes() - reading.amperes();
    double amperesAllowed =
        REGULATION_SHARE * commanded.limitAmperes()
            + channel.amperesError().at(commanded.limitAmperes());
    boolean levelHeld = voltsShort <= voltsAllowed;
    boolean limitHeld = amperesShort <= amperesAllowed;
    boolean held =
        switch (reading.regulation()) {
          case CONSTANT_VOLTAGE -> levelHeld;
          case CONSTANT_CURRENT -> limitHeld;
          default -> levelHeld || limitHeld;
        };
    return held
        ? null
        : new Breach(
            StopCause.OUTPUT_NOT_AS_COMMANDED,
            "the output is on with "
                + Quantity.format(commanded.levelVolts(), Unit.VOLT)
                + " and "
                + Quantity.format(commanded.limitAmperes(), Unit.AMPERE)
                + " set, but reads "
                + Quantity.format(reading.volts(), Unit.VOLT)
                + " and "
                + Quantity.format(reading.amperes(), Unit.AMPERE)
                + ": it holds neither");
  }

  private static String words(Regulation regulation) {
    return regulation.name().toLowerCase(java.util.Locale.ROOT).replace('_', ' ');
  }

  private static Breach over(StopCause cause, String what, double value, Bound most, Unit unit) {
    return new Breach(
        cause,
        what
            + " "
            + Quantity.format(value, unit)
            + ", allowed at most "
            + Quantity.format(most.value(), unit)
            + " ("
            + most.origin()
            + ")");
  }
}
