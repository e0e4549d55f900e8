package railglow.run.logging;

import railglow.observed.SupplyReading;

/**
 * How long readings take: half of the longest exchange seen bounds how far a reading can be from
 * its stated time. Written by one thread, read by any.
 */
final class ReadingSpread {
  private volatile double halfSeconds = Double.NaN;

  void add(SupplyReading reading) {
    double half = (reading.endNanos() - reading.startNanos()) / 2e9;
    if (!(halfSeconds >= half)) {
      halfSeconds = half;
    }
  }

  /** NaN before the first reading. */
  double halfSeconds() {
    return halfSeconds;
  }
}
