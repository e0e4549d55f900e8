package railglow.thermal;

/**
 * Running mean and covariance, per pixel, of the pair (in-phase, quadrature) over cycles, by
 * Welford's update (Technometrics 4, 1962, p. 419): no sums of squares, so nothing cancels. Planes
 * of sums of squared deviations are to be divided by (cycles - 1). Not thread-safe.
 */
final class ChannelMoments {
  /** Pixels at a time: what the loops share stays in the cache. */
  private static final int TILE = 1024;

  private final float[] meanI;
  private final float[] meanC;
  private final float[] squaresI;
  private final float[] squaresC;
  private final float[] products;
  private int cycles;

  ChannelMoments(int pixels) {
    meanI = new float[pixels];
    meanC = new float[pixels];
    squaresI = new float[pixels];
    squaresC = new float[pixels];
    products = new float[pixels];
  }

  void add(float[] inPhase, float[] quadrature) {
    update(this, inPhase, quadrature, 0, meanI.length);
  }

  /** Becomes the state of another with one cycle more, at pixels from one to before another. */
  void setTo(ChannelMoments other, float[] inPhase, float[] quadrature, int from, int to) {
    update(other, inPhase, quadrature, from, to);
  }

  /** Three short loops, for the JIT compiler gives up on one with all five planes. */
  private void update(ChannelMoments old, float[] x, float[] y, int from, int to) {
    cycles = old.cycles + 1;
    float share = 1f / cycles;
    float rest = 1 - share;
    for (int start = from; start < to; start += TILE) {
      int end = Math.min(to, start + TILE);
      product(products, old.products, x, old.meanI, y, old.meanC, rest, start, end);
      spread(squaresI, old.squaresI, x, old.meanI, rest, start, end);
      spread(squaresC, old.squaresC, y, old.meanC, rest, start, end);
      approach(meanI, old.meanI, x, share, start, end);
      approach(meanC, old.meanC, y, share, start, end);
    }
  }

  private static void product(
      float[] sum,
      float[] old,
      float[] x,
      float[] meanX,
      float[] y,
      float[] meanY,
      float rest,
      int from,
      int to) {
    for (int i = from; i < to; i++) {
      sum[i] = old[i] + (x[i] - meanX[i]) * (y[i] - meanY[i]) * rest;
    }
  }

  private static void spread(
      float[] sum, float[] old, float[] x, float[] mean, float rest, int from, int to) {
    for (int i = from; i < to; i++) {
      float d = x[i] - mean[i];
      sum[i] = old[i] + d * d * rest;
    }
  }

  private static void approach(
      float[] mean, float[] old, float[] x, float share, int from, int to) {
    for (int i = from; i < to; i++) {
      mean[i] = old[i] + (x[i] - old[i]) * share;
    }
  }

  /** Takes planes out of the means; the scatter stays. */
  void subtractFromMeans(float[] inPhase, float[] quadrature, int from, int to) {
    for (int i = from; i < to; i++) {
      meanI[i] -= inPhase[i];
      meanC[i] -= quadrature[i];
    }
  }

  int cycles() {
    return cycles;
  }

  float[] meanI() {
    return meanI;
  }

  float[] meanC() {
    return meanC;
  }

  float[] squaresI() {
    return squaresI;
  }

  float[] squaresC() {
    return squaresC;
  }

  float[] products() {
    return products;
  }
}
