package railglow.sim;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import railglow.thermal.CycleTimes;

/** Collects when the frames of one cycle were taken. Not thread-safe. */
final class FramesOfCycle {
  private List<List<Double>> seconds = none();

  private static List<List<Double>> none() {
    return Stream.generate(() -> (List<Double>) new ArrayList<Double>()).limit(4).toList();
  }

  /**
   * @param quarter 1 to 4
   * @param sinceStart of the cycle, s
   */
  void note(int quarter, double sinceStart) {
    seconds.get(quarter - 1).add(sinceStart);
  }

  void reset() {
    seconds = none();
  }

  /**
   * Those of a cycle that is through; then starts afresh.
   *
   * @param onBefore whether the output was on before the first switch
   * @param switchSeconds after the cycle's start
   */
  CycleTimes take(
      double periodSeconds, boolean inverted, boolean onBefore, double... switchSeconds) {
    double[][] quarters =
        seconds.stream()
            .map(quarter -> quarter.stream().mapToDouble(Double::doubleValue).toArray())
            .toArray(double[][]::new);
    reset();
    return new CycleTimes(periodSeconds, inverted, onBefore, switchSeconds, quarters);
  }
}
