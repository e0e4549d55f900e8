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
  private float[] firstI;
  private float[] firstC;
  private float[] evening;
  private int cycles;

  ChannelMoments(int pixels) {
    meanI = new float[pixels];
    meanC = new float[pixels];
    squaresI = new float[pixels];
    squaresC = new float[pixels];
    products = new float[pixels];
  }

  void add(float[] inPhase, float[] quadrature) {
    if (cycles == 0) {
      firstI = inPhase.clone();
      firstC = quadrature.clone();
    }
    update(this, inPhase, quadrature, 0, meanI.length);
  }

  /** Becomes the state of another with one cycle more, at pixels from one to before another. */
  void setTo(ChannelMoments other, float[] inPhase, float[] quadrature, int from, int to) {
    firstI = other.firstI;
    firstC = other.firstC;
    evening = null;
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

  /** Takes what is in a row out of the means; the scatter stays. */
  void subtractFromMeans(float[] inPhase, float[] quadrature, int from, int n) {
    for (int x = 0; x < n; x++) {
      meanI[from + x] -= inPhase[x];
      meanC[from + x] -= quadrature[x];
    }
  }

  /**
   * Measures the pixels from one to before another in units of a deviation of their own, until set
   * anew.
   *
   * @param perDeviation one over that deviation, for every pixel
   */
  void evenOut(float[] perDeviation, int from, int to) {
    evening = perDeviation;
    for (int i = from; i < to; i++) {
      float each = perDeviation[i];
      meanI[i] *= each;
      meanC[i] *= each;
      squaresI[i] *= each * each;
      squaresC[i] *= each * each;
      products[i] *= each * each;
    }
  }

  /** Those of one pixel. */
  PixelMoments at(int i) {
    float each = evening == null ? 1 : evening[i];
    return new PixelMoments(
        cycles,
        meanI[i],
        meanC[i],
        squaresI[i],
        squaresC[i],
        products[i],
        each * firstI[i] - meanI[i],
        each * firstC[i] - meanC[i]);
  }

  /**
   * Those of one pixel with one cycle more: the bits of setting all to that, taking planes out and
   * evening them out.
   *
   * @param x in phase in that cycle
   * @param y in quadrature
   * @param takenI what is taken out of the mean and of the first cycle
   * @param takenC likewise
   * @param each one over the deviation that is the unit
   */
  PixelMoments with(int i, float x, float y, float takenI, float takenC, float each) {
    float share = 1f / (cycles + 1);
    float rest = 1 - share;
    float dX = x - meanI[i];
    float dY = y - meanC[i];
    float newI = (meanI[i] + dX * share - takenI) * each;
    float newC = (meanC[i] + dY * share - takenC) * each;
    return new PixelMoments(
        cycles + 1,
        newI,
        newC,
        (squaresI[i] + dX * dX * rest) * (each * each),
        (squaresC[i] + dY * dY * rest) * (each * each),
        (products[i] + dX * dY * rest) * (each * each),
        each * firstI[i] - newI - each * takenI,
        each * firstC[i] - newC - each * takenC);
  }

  /** Becomes the means of part of a row of another; the scatter too where it is asked for. */
  void copyRow(ChannelMoments other, int from, int n, boolean withScatter) {
    cycles = other.cycles;
    System.arraycopy(other.meanI, from, meanI, 0, n);
    System.arraycopy(other.meanC, from, meanC, 0, n);
    if (withScatter) {
      System.arraycopy(other.squaresI, from, squaresI, 0, n);
      System.arraycopy(other.squaresC, from, squaresC, 0, n);
      System.arraycopy(other.products, from, products, 0, n);
    }
  }

  /** Becomes the means of another with one cycle more; the scatter is left as it is. */
  void setMeansTo(ChannelMoments other, float[] inPhase, float[] quadrature, int from, int to) {
    cycles = other.cycles + 1;
    float share = 1f / cycles;
    approach(meanI, other.meanI, inPhase, share, from, to);
    approach(meanC, other.meanC, quadrature, share, from, to);
  }

  /**
   * What the means without the first cycle are above those of all, of two cycles or more.
   *
   * @param more what the sums of the other cycles lack besides; as they are, not per cycle
   */
  ReducedCycle withoutFirst(ReducedCycle more) {
    return new ReducedCycle(
        withoutFirst(meanI, firstI, more.inPhase()),
        withoutFirst(meanC, firstC, more.quadrature()));
  }

  private float[] withoutFirst(float[] mean, float[] first, float[] more) {
    float[] above = new float[mean.length];
    float share = 1f / (cycles - 1);
    for (int i = 0; i < above.length; i++) {
      above[i] = (mean[i] - first[i] + more[i]) * share;
    }
    return above;
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
