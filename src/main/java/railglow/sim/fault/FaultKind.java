package railglow.sim.fault;

import java.util.Locale;
import railglow.units.Unit;

/** What can go wrong, each with the meaning of its value, if it has one. */
public enum FaultKind {
  /** The supply takes commands but answers no question. */
  NO_REPLY,
  /** Every answer comes late by the value. */
  LATE_REPLY(Unit.SECOND, 0.8),
  /** Every answer is the one to the question before. */
  PREVIOUS_REPLY,
  /** Answers stop half-way, without their end mark. */
  TRUNCATED_REPLY,
  /** Answers are bytes without sense. */
  GARBAGE_REPLY,
  /** Answers come one byte at a time with the value between them. */
  BYTE_AT_A_TIME(Unit.SECOND, 0.002),
  /** Every command is sent back before it is answered. */
  ECHO,
  /** The connection is closed, once. */
  DROP_CONNECTION(true),
  /** New connections are closed at once. */
  REFUSE_CONNECTION,
  /** OFF is taken and believed to be done, but the output stays on. */
  IGNORES_OFF,
  /** The supply forgets all settings and switches off, once. */
  RESETS_ITSELF(true),
  /** Measurements answer 9.91E37. */
  NOT_A_NUMBER,
  /** Measurements answer 9.9E37. */
  OVERFLOW_READING,
  /** Each command leaves an error in the queue. */
  ERROR_QUEUE_FILLS,
  /** The overvoltage protection trips, once. */
  OVERVOLTAGE_TRIP(true),
  /** The overcurrent protection trips, once. */
  OVERCURRENT_TRIP(true),
  /** The current limit sinks to 0.6 of the present current. */
  FALLS_INTO_CC,
  /** The fault's resistance rises to the value, so that the current limit no longer holds. */
  LEAVES_CC(Unit.OHM, 100),
  /** The fault's resistance falls to the value. */
  RUNAWAY(Unit.OHM, 0.5),
  /** The value flows into the rail although the output is off. */
  CURRENT_WHILE_OFF(Unit.AMPERE, 0.1),
  /** The output stands above the set voltage by the value. */
  VOLTAGE_OVER_SET(Unit.VOLT, 0.5),
  /**
   * The rail's capacitor falls by 1/e in about the value when only a load of 1 ohm discharges it.
   */
  SLOW_DISCHARGE(Unit.SECOND, 0.5),
  /** The probe is off the rail. */
  CONTACT_LOST,
  /** The same image again and again, under new numbers. */
  FROZEN_FRAMES,
  /** No frames at all. */
  CAMERA_STOPS,
  /** Each frame is sent eight times under new numbers. */
  CAMERA_FLOODS,
  /** The camera's connection is closed, once. */
  DROP_CAMERA(true),
  /** The camera has been pushed aside by the value. */
  CAMERA_MOVED(Unit.PIXEL, 3);

  private final Unit unit;
  private final double defaultValue;
  private final boolean once;

  FaultKind() {
    this(null, Double.NaN, false);
  }

  FaultKind(boolean once) {
    this(null, Double.NaN, once);
  }

  FaultKind(Unit unit, double defaultValue) {
    this(unit, defaultValue, false);
  }

  FaultKind(Unit unit, double defaultValue, boolean once) {
    this.unit = unit;
    this.defaultValue = defaultValue;
    this.once = once;
  }

  /** The unit of its value; null when it has none. */
  public Unit unit() {
    return unit;
  }

  public double defaultValue() {
    return defaultValue;
  }

  /** Whether it happens at a moment instead of lasting. */
  public boolean once() {
    return once;
  }

  /** As written on the command line, for example {@code late-reply}. */
  public String written() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
