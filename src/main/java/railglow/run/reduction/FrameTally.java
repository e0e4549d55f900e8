package railglow.run.reduction;

import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import railglow.observed.FrameMark;

/**
 * Counts frames left out, by reason, of one cycle and of the whole run. Counting allocates nothing
 * for a reason seen before. Not thread-safe.
 */
final class FrameTally {
  private static final Map<FrameMark, String> NAMES = new EnumMap<>(FrameMark.class);

  static {
    for (FrameMark mark : FrameMark.values()) {
      NAMES.put(mark, mark.name().toLowerCase(Locale.ROOT).replace('_', '-'));
    }
  }

  private final Map<String, int[]> ofCycle = new TreeMap<>();
  private final Map<String, int[]> ofRun = new TreeMap<>();

  /** The reason that a mark is. */
  static String name(FrameMark mark) {
    return NAMES.get(mark);
  }

  void leftOut(String reason) {
    count(ofCycle, reason);
    count(ofRun, reason);
  }

  /** Left out, but belongs to no cycle. */
  void outside(String reason) {
    count(ofRun, reason);
  }

  /** Those of the cycle, which then begins afresh. */
  Map<String, Integer> takeCycle() {
    Map<String, Integer> taken = Map.copyOf(counted(ofCycle));
    ofCycle.values().forEach(count -> count[0] = 0);
    return taken;
  }

  Map<String, Integer> ofRun() {
    return counted(ofRun);
  }

  private static void count(Map<String, int[]> counts, String reason) {
    int[] count = counts.get(reason);
    if (count == null) {
      count = new int[1];
      counts.put(reason, count);
    }
    count[0]++;
  }

  private static Map<String, Integer> counted(Map<String, int[]> counts) {
    Map<String, Integer> all = new TreeMap<>();
    counts.forEach(
        (reason, count) -> {
          if (count[0] > 0) {
            all.put(reason, count[0]);
          }
        });
    return all;
  }
}
