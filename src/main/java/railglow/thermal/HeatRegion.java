package railglow.thermal;

import java.util.ArrayDeque;

/**
 * The pixels that are warm together with what is called: its skirts too. Not copied: whoever asks
 * does not change them.
 *
 * @param pixels which are warm
 * @param rows which cross one of them
 * @param columns likewise
 */
record HeatRegion(boolean[] pixels, boolean[] rows, boolean[] columns) {
  private static final double SKIRT_SIGMAS = 3;

  /** Cleaning leaves traces of a few percent of what it worked on. */
  private static final double TRACE_SHARE = 0.05;

  /**
   * Everything around the pixels called that is still clear of the noise at a wide filter, whatever
   * its delay. What a whole row or column has in common is no heat: cleaning leaves its trace all
   * along the lines that cross a source.
   *
   * @param called flat indices; those far weaker than the strongest may themselves be such traces
   */
  static HeatRegion around(
      Iterable<Integer> called, ChannelMoments wide, DelayArc arc, int width, int height) {
    double noise = 1 / Math.sqrt(wide.cycles());
    WithoutLines inPhase = new WithoutLines(wide.meanI(), width, height, noise);
    WithoutLines quadrature = new WithoutLines(wide.meanC(), width, height, noise);
    double least = SKIRT_SIGMAS / Math.sqrt(wide.cycles());
    HeatRegion region =
        new HeatRegion(new boolean[width * height], new boolean[height], new boolean[width]);
    ArrayDeque<Integer> open = new ArrayDeque<>();
    double most = 0;
    for (int pixel : called) {
      most = Math.max(most, warmth(inPhase.at(pixel), quadrature.at(pixel), arc));
    }
    for (int pixel : called) {
      if (warmth(inPhase.at(pixel), quadrature.at(pixel), arc) >= TRACE_SHARE * most) {
        open.add(pixel);
      }
    }
    while (!open.isEmpty()) {
      int i = open.poll();
      if (!region.pixels[i]) {
        int x = i % width;
        int y = i / width;
        region.pixels[i] = true;
        region.rows[y] = true;
        region.columns[x] = true;
        for (int side = 0; side < 4; side++) {
          int nx = x + (side == 0 ? 1 : side == 1 ? -1 : 0);
          int ny = y + (side == 2 ? 1 : side == 3 ? -1 : 0);
          int n = ny * width + nx;
          boolean inside = nx >= 0 && nx < width && ny >= 0 && ny < height;
          if (inside && !region.pixels[n] && warmth(inPhase.at(n), quadrature.at(n), arc) > least) {
            open.add(n);
          }
        }
      }
    }
    return region;
  }

  /** Cold does not count: the lines that cross heat are left too cold by cleaning. */
  private static double warmth(float inPhase, float quadrature, DelayArc arc) {
    double most = 0;
    for (int j = 0; j < arc.directions(); j++) {
      most = Math.max(most, arc.weightI()[j] * inPhase + arc.weightC()[j] * quadrature);
    }
    return most;
  }
}
