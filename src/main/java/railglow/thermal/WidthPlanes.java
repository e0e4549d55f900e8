package railglow.thermal;

/**
 * One filter width of a run: the filter, the moments of its output over all cycles that are
 * settled, and its output for the cycle after them, from which every look and all that is taken out
 * at one start anew. Not thread-safe.
 */
final class WidthPlanes {
  private final MatchedFilter filter;
  private final ChannelMoments settled;
  private final float[] lastI;
  private final float[] lastC;

  WidthPlanes(int width, int height, double sigma) {
    filter = new MatchedFilter(width, height, sigma);
    settled = new ChannelMoments(width * height);
    lastI = new float[width * height];
    lastC = new float[width * height];
  }

  MatchedFilter filter() {
    return filter;
  }

  /** Of all cycles but the last. */
  ChannelMoments settled() {
    return settled;
  }

  /** The last cycle, filtered; the array itself, which {@link FilterBank} writes. */
  float[] lastI() {
    return lastI;
  }

  /** Likewise. */
  float[] lastC() {
    return lastC;
  }

  /** The last cycle is final; another must be set. */
  void settle() {
    settled.add(lastI, lastC);
  }

  /** The moments with the last cycle, at pixels from one to before another. */
  void momentsInto(ChannelMoments moments, int from, int to) {
    moments.setTo(settled, lastI, lastC, from, to);
  }

  /** Their means alone, at all pixels. */
  void meansInto(ChannelMoments moments) {
    moments.setMeansTo(settled, lastI, lastC, 0, lastI.length);
  }
}
