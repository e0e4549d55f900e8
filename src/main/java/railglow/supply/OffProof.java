package railglow.supply;

import railglow.observed.SupplyReading;
import railglow.units.Quantity;
import railglow.units.Unit;

/**
 * When an output counts as proven off: the supply says its switch is off, no current flows, and the
 * voltage is down. A regulated output that is on holds its level or its current limit; one that
 * shows no current and a voltage well under its level does neither, so a charged capacitor on the
 * rail only delays the proof. Pure.
 */
final class OffProof {
  private static final double LOW_VOLTS = 0.1;
  private static final double FALLEN_SHARE = 0.9;
  private final ChannelAbility channel;

  OffProof(ChannelAbility channel) {
    this.channel = channel;
  }

  /**
   * Why the reading does not prove the output off; empty when it does.
   *
   * @param said what the supply says of its switch, in or just before this reading
   * @param setVolts the level the supply is set to; NaN when not known
   */
  String doubt(SwitchState said, SupplyReading reading, double setVolts) {
    if (said == SwitchState.ON) {
      return "the supply says its output is still on";
    }
    if (!ReadingJudge.isMeasurement(reading.volts())
        || !ReadingJudge.isMeasurement(reading.amperes())) {
      return "the supply gives no usable reading";
    }
    if (currentFlows(reading)) {
      return Quantity.format(reading.amperes(), Unit.AMPERE) + " still flow";
    }
    boolean fallen = Math.abs(reading.volts()) <= fallenVolts(setVolts);
    boolean low = Math.abs(reading.volts()) <= LOW_VOLTS + channel.voltsError().at(0);
    // Without the supply's word, a low voltage alone could be an open output at a tiny level.
    if (fallen || low && said == SwitchState.OFF) {
      return "";
    }
    return Quantity.format(reading.volts(), Unit.VOLT) + " still stand at the output";
  }

  boolean currentFlows(SupplyReading reading) {
    double amperes = Math.abs(reading.amperes());
    return ReadingJudge.isMeasurement(amperes) && amperes > channel.amperesError().at(0);
  }

  /** Below this the output can't be on at the level; negative where the meter can't tell. */
  private double fallenVolts(double setVolts) {
    if (Double.isNaN(setVolts)) {
      return -1;
    }
    return Math.min(FALLEN_SHARE * setVolts, setVolts - 2 * channel.voltsError().at(setVolts));
  }
}
