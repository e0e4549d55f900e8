package railglow.sim;

import java.util.ArrayList;
import java.util.List;

/**
 * Means over whole quarters of what a camera of first order shows of a place, exactly where the
 * place changes evenly from one value to the next: the integral of y, which follows x by y' = (x -
 * y) / lag, is that of x less the lag times what y gained.
 */
final class LaggedQuarters {
  private final double lagSeconds;
  private final double stepSeconds;
  private final int stepsPerQuarter;
  private final List<Double> means = new ArrayList<>();
  private double x = Double.NaN;
  private double y;
  private double yAtStart;
  private double area;
  private int steps;

  /**
   * @param lagSeconds of the camera
   * @param stepSeconds from value to value
   */
  LaggedQuarters(double lagSeconds, double stepSeconds, int stepsPerQuarter) {
    this.lagSeconds = lagSeconds;
    this.stepSeconds = stepSeconds;
    this.stepsPerQuarter = stepsPerQuarter;
  }

  /**
   * Takes the next value.
   *
   * @param counts whether quarters have begun; the first value that does is at the start of one
   */
  void take(double next, boolean counts) {
    if (Double.isNaN(x)) {
      x = next;
      y = next;
    }
    double before = x;
    double left = lagSeconds > 0 ? Math.exp(-stepSeconds / lagSeconds) : 0;
    double slope = (next - before) * lagSeconds / stepSeconds;
    y = next - slope + (y - before + slope) * left;
    x = next;
    if (!counts) {
      return;
    }
    if (steps > 0) {
      area += (before + next) / 2 * stepSeconds;
    }
    if (steps == stepsPerQuarter) {
      means.add((area - lagSeconds * (y - yAtStart)) / (stepsPerQuarter * stepSeconds));
      steps = 0;
      area = 0;
    }
    if (steps == 0) {
      yAtStart = y;
    }
    steps++;
  }

  /**
   * The size of both channels in the mean of cycles, a steady drift from first to last taken out.
   */
  double swing(int firstCycle, int lastCycle) {
    double inPhase = 0;
    double quadrature = 0;
    for (int cycle = firstCycle; cycle <= lastCycle; cycle++) {
      List<Double> q = means.subList(4 * cycle, 4 * cycle + 4);
      inPhase += (q.get(1) + q.get(2) - q.get(0) - q.get(3)) / 2;
      quadrature += (q.get(2) + q.get(3) - q.get(0) - q.get(1)) / 2;
    }
    int cycles = lastCycle - firstCycle + 1;
    double drift = (mean(lastCycle) - mean(firstCycle)) / (cycles - 1);
    return Math.hypot(inPhase / cycles, quadrature / cycles - drift / 2);
  }

  private double mean(int cycle) {
    return means.subList(4 * cycle, 4 * cycle + 4).stream()
        .mapToDouble(Double::doubleValue)
        .average()
        .orElseThrow();
  }
}
