package railglow.pulse;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Cycle windows around pulses that were made by somebody else: each cycle takes half of the OFF
 * time before its pulse and half of that after it. Pure.
 */
public final class CyclesFromEdges {
  private CyclesFromEdges() {}

  /**
   * @param onNanos when each pulse began, ascending
   * @param offNanos when each pulse ended; as many, each after its beginning and before the next
   * @throws IllegalArgumentException naming the pulse that is out of order
   */
  public static List<CycleWindow> of(long[] onNanos, long[] offNanos) {
    if (onNanos.length != offNanos.length) {
      throw new IllegalArgumentException(
          onNanos.length + " pulses began but " + offNanos.length + " ended");
    }
    for (int k = 0; k < onNanos.length; k++) {
      boolean tooSoon = k > 0 && onNanos[k] - offNanos[k - 1] < 2;
      if (tooSoon || offNanos[k] - onNanos[k] < 2) {
        throw new IllegalArgumentException("pulse " + (k + 1) + " is out of order");
      }
    }
    List<CycleWindow> cycles = new ArrayList<>();
    for (int k = 0; k < onNanos.length; k++) {
      long length = offNanos[k] - onNanos[k];
      boolean last = k == onNanos.length - 1;
      long before = k == 0 ? length / 2 : (onNanos[k] - offNanos[k - 1]) / 2;
      long after = last ? length / 2 : (onNanos[k + 1] - offNanos[k]) / 2;
      cycles.add(
          new CycleWindow(
              k,
              onNanos[k] - before,
              onNanos[k],
              onNanos[k] + length / 2,
              offNanos[k],
              offNanos[k] + after));
    }
    return cycles;
  }

  /** The middle one of the distances between beginnings; of a single pulse twice its length. */
  public static double periodSeconds(List<CycleWindow> cycles) {
    if (cycles.size() == 1) {
      CycleWindow only = cycles.get(0);
      return 2e-9 * (only.offNanos() - only.onNanos());
    }
    double[] distances = new double[cycles.size() - 1];
    for (int k = 0; k < distances.length; k++) {
      distances[k] = 1e-9 * (cycles.get(k + 1).onNanos() - cycles.get(k).onNanos());
    }
    Arrays.sort(distances);
    return distances[distances.length / 2];
  }
}
