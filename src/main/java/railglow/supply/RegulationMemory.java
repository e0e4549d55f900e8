package railglow.supply;

import railglow.observed.Regulation;
import railglow.observed.SupplyReading;

/**
 * What regulation to expect at the present level. A half that ended steadily in one regulation
 * tells what the next must be. Within a half a capacitor on the rail may be charged at the current
 * limit first; once the voltage is reached it must be held. Owned by the keeper's thread.
 */
final class RegulationMemory {
  /** A rail that charges rises by at least this share of the level from reading to reading. */
  static final double CHARGING_SHARE = 0.01;

  private Regulation learned = Regulation.NOT_REPORTED;
  private SupplyReading last;
  private boolean steady;
  private boolean voltageReached;

  /** The level has changed: nothing is expected any more. */
  void forget() {
    learned = Regulation.NOT_REPORTED;
    beginHalf();
  }

  void beginHalf() {
    last = null;
    steady = false;
    voltageReached = false;
  }

  /** The half is over: its last settled reading is learned from if it was steady. */
  void endHalf() {
    if (last != null && steady) {
      learned = last.regulation();
    }
    beginHalf();
  }

  /** Takes a settled reading of an output that is on and that was no breach. */
  void add(SupplyReading reading, double levelVolts) {
    boolean constantVoltage = reading.regulation() == Regulation.CONSTANT_VOLTAGE;
    voltageReached |= constantVoltage;
    steady =
        constantVoltage
            || last != null
                && Math.abs(reading.volts() - last.volts()) < CHARGING_SHARE * levelVolts;
    last = reading;
  }

  Regulation expected() {
    return voltageReached ? Regulation.CONSTANT_VOLTAGE : learned;
  }

  /** Above this a reading at the current limit shows a rail that charges; NaN when it can't be. */
  double chargingAboveVolts(double levelVolts) {
    return voltageReached || last == null ? Double.NaN : last.volts() + CHARGING_SHARE * levelVolts;
  }
}
