package railglow.run.ladder;

import java.util.ArrayList;
import java.util.List;
import railglow.board.ladder.LadderStep;
import railglow.observed.Regulation;
import railglow.observed.SupplyReading;

/** The settled readings of one level, and the step they make. Not thread-safe. */
final class StepReadings {
  private static final int LEAST = 2;
  private final double leadOhms;
  private final ReadBack readBack;
  private final List<SupplyReading> readings = new ArrayList<>();

  /**
   * @param leadOhms taken off each voltage; 0 when sensed at the board
   * @param readBack how well the supply reads back
   */
  StepReadings(double leadOhms, ReadBack readBack) {
    this.leadOhms = leadOhms;
    this.readBack = readBack;
  }

  void add(SupplyReading reading) {
    readings.add(reading);
  }

  /** Whether a reading began with the level confirmed and settled. */
  static boolean counts(SupplyReading reading, long confirmedNanos, double settleSeconds) {
    return reading.outputOn()
        && reading.startNanos() - confirmedNanos >= Math.round(settleSeconds * 1e9);
  }

  int size() {
    return readings.size();
  }

  boolean isEnough() {
    return readings.size() >= LEAST;
  }

  LadderStep step() {
    double[] volts = new double[readings.size()];
    double[] amperes = new double[readings.size()];
    boolean limited = false;
    for (int i = 0; i < volts.length; i++) {
      amperes[i] = readings.get(i).amperes();
      volts[i] = readings.get(i).volts() - amperes[i] * leadOhms;
      limited |= readings.get(i).regulation() == Regulation.CONSTANT_CURRENT;
    }
    int third = Math.max(1, amperes.length / 3);
    double drift = mean(amperes, amperes.length - third, amperes.length) - mean(amperes, 0, third);
    double scatter = scatter(amperes);
    return new LadderStep(
        mean(volts, 0, volts.length),
        Math.hypot(readBack.volts(), scatter(volts) / Math.sqrt(volts.length)),
        mean(amperes, 0, amperes.length),
        Math.hypot(readBack.amperes(), scatter / Math.sqrt(amperes.length)),
        drift,
        Math.hypot(readBack.amperes(), scatter * Math.sqrt(2.0 / third)),
        limited);
  }

  private static double mean(double[] values, int from, int to) {
    double sum = 0;
    for (int i = from; i < to; i++) {
      sum += values[i];
    }
    return sum / (to - from);
  }

  private static double scatter(double[] values) {
    double mean = mean(values, 0, values.length);
    double squares = 0;
    for (double value : values) {
      squares += (value - mean) * (value - mean);
    }
    return values.length < 2 ? 0 : Math.sqrt(squares / (values.length - 1));
  }
}
