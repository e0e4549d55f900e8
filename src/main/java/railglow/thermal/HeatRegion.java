package railglow.thermal;

import java.util.ArrayDeque;

/** The pixels that are warm together with what is called: its skirts too. Stateless. */
final class HeatRegion {
  private static final double SKIRT_SIGMAS = 3;

  private HeatRegion() {}

  /**
   * Everything around the pixels called that is still clear of the noise at a wide filter, whatever
   * its delay.
   *
   * @param called flat indices
   */
  static boolean[] around(
      Iterable<Integer> called, ChannelMoments wide, DelayArc arc, int width, int height) {
    boolean[] region = new boolean[width * height];
    ArrayDeque<Integer> open = new ArrayDeque<>();
    for (int pixel : called) {
      open.add(pixel);
    }
    while (!open.isEmpty()) {
      int i = open.poll();
      if (!region[i]) {
        region[i] = true;
        int x = i % width;
        int y = i / width;
        for (int side = 0; side < 4; side++) {
          int nx = x + (side == 0 ? 1 : side == 1 ? -1 : 0);
          int ny = y + (side == 2 ? 1 : side == 3 ? -1 : 0);
          int n = ny * width + nx;
          boolean inside = nx >= 0 && nx < width && ny >= 0 && ny < height;
          if (inside && !region[n] && isWarm(wide, arc, n)) {
            open.add(n);
          }
        }
      }
    }
    return region;
  }

  /** Cold does not count: the lines that cross heat are left too cold by cleaning. */
  private static boolean isWarm(ChannelMoments m, DelayArc arc, int i) {
    double least = SKIRT_SIGMAS / Math.sqrt(m.cycles());
    for (int j = 0; j < arc.directions(); j++) {
      if (arc.weightI()[j] * m.meanI()[i] + arc.weightC()[j] * m.meanC()[i] > least) {
        return true;
      }
    }
    return false;
  }
}
