package railglow.supply;

import railglow.observed.SupplyReading;

/**
 * Energy put into the board, counted from above: between two readings the larger power of both is
 * taken for the whole time; ON time runs from the command to the confirmed end. Not thread-safe.
 */
final class EnergyCount {
  private double joules;
  private double lastWatts;
  private long lastNanos;
  private boolean on;

  void switchedOn(long commandedNanos) {
    on = true;
    lastWatts = 0;
    lastNanos = commandedNanos;
  }

  void switchedOff(long confirmedNanos) {
    if (on) {
      joules += lastWatts * (confirmedNanos - lastNanos) / 1e9;
      on = false;
    }
  }

  /** Takes a reading that is a measurement. */
  void add(SupplyReading reading) {
    if (on) {
      double watts = Math.abs(reading.watts());
      joules += Math.max(watts, lastWatts) * (reading.endNanos() - lastNanos) / 1e9;
      lastWatts = watts;
      lastNanos = reading.endNanos();
    }
  }

  double joules() {
    return joules;
  }
}
