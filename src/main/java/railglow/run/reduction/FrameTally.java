package railglow.run.reduction;

import java.util.Map;
import java.util.TreeMap;

/** Counts frames left out, by reason, of one cycle and of the whole run. Not thread-safe. */
final class FrameTally {
  private final Map<String, Integer> ofCycle = new TreeMap<>();
  private final Map<String, Integer> ofRun = new TreeMap<>();

  void leftOut(String reason) {
    ofCycle.merge(reason, 1, Integer::sum);
    ofRun.merge(reason, 1, Integer::sum);
  }

  /** Left out, but belongs to no cycle. */
  void outside(String reason) {
    ofRun.merge(reason, 1, Integer::sum);
  }

  Map<String, Integer> takeCycle() {
    Map<String, Integer> taken = Map.copyOf(ofCycle);
    ofCycle.clear();
    return taken;
  }

  Map<String, Integer> ofRun() {
    return new TreeMap<>(ofRun);
  }
}
