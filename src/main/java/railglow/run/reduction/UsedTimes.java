package railglow.run.reduction;

import java.util.Arrays;
import railglow.pulse.CycleWindow;
import railglow.thermal.CycleTimes;

/**
 * Collects when the frames used of a cycle were taken. Noting a frame allocates nothing once there
 * was a cycle with as many. Not thread-safe.
 */
final class UsedTimes {
  private static final double NANOS = 1e9;
  private final long[][] midNanos = new long[4][64];
  private final int[] frames = new int[4];

  /**
   * @param quarter 1 to 4
   */
  void note(int quarter, long frameMidNanos) {
    int at = quarter - 1;
    if (frames[at] == midNanos[at].length) {
      midNanos[at] = Arrays.copyOf(midNanos[at], 2 * frames[at]);
    }
    midNanos[at][frames[at]++] = frameMidNanos;
  }

  /** Forgets them. */
  void reset() {
    Arrays.fill(frames, 0);
  }

  /**
   * Of a cycle in which every quarter has a frame; then starts afresh.
   *
   * @param edges those made within it or at its start
   */
  CycleTimes take(CycleWindow window, FrameLabeller.EdgesMade edges) {
    double[][] seconds = new double[4][];
    for (int quarter = 0; quarter < 4; quarter++) {
      seconds[quarter] = new double[frames[quarter]];
      for (int k = 0; k < frames[quarter]; k++) {
        seconds[quarter][k] = (midNanos[quarter][k] - window.startNanos()) / NANOS;
      }
    }
    double[] switchSeconds = new double[edges.nanos().length];
    for (int k = 0; k < switchSeconds.length; k++) {
      switchSeconds[k] = Math.max(0, (edges.nanos()[k] - window.startNanos()) / NANOS);
    }
    reset();
    return new CycleTimes(
        (window.endNanos() - window.startNanos()) / NANOS,
        window.inverted(),
        edges.onBefore(),
        switchSeconds,
        seconds);
  }
}
