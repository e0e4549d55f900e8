package railglow.run.reduction;

import railglow.observed.Edge;
import railglow.observed.SupplyReading;

/**
 * Means of the supply's readings in the settled part of the ON halves, and the energy given. Not
 * thread-safe.
 */
final class SupplyLevels {
  private static final long SETTLE_NANOS = 50_000_000L;
  private final double leadOhms;
  private long onSinceNanos;
  private boolean on;
  private SupplyReading held;
  private long count;
  private double sumVolts;
  private double sumAmperes;
  private double sumWatts;

  /**
   * @param leadOhms both leads; 0 when the supply senses at the board
   */
  SupplyLevels(double leadOhms) {
    this.leadOhms = leadOhms;
  }

  void edgeMade(Edge edge) {
    if (!edge.on()) {
      // The reading held may have ended after the command was given.
      if (held != null && held.endNanos() <= edge.commandedNanos()) {
        add(held);
      }
      held = null;
    }
    on = edge.on();
    onSinceNanos = edge.confirmedNanos();
  }

  void reading(SupplyReading reading) {
    if (held != null) {
      add(held);
      held = null;
    }
    if (on
        && reading.outputOn()
        && reading.startNanos() >= onSinceNanos + SETTLE_NANOS
        && Double.isFinite(reading.volts())
        && Double.isFinite(reading.amperes())) {
      held = reading;
    }
  }

  private void add(SupplyReading reading) {
    double boardVolts = reading.volts() - reading.amperes() * leadOhms;
    count++;
    sumVolts += boardVolts;
    sumAmperes += reading.amperes();
    sumWatts += boardVolts * reading.amperes();
  }

  /** At the board; NaN when nothing was measured. */
  double meanVolts() {
    return sumVolts / count;
  }

  double meanAmperes() {
    return sumAmperes / count;
  }

  double meanWatts() {
    return sumWatts / count;
  }
}
