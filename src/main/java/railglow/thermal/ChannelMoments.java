package railglow.thermal;

/**
 * Running mean and covariance, per pixel, of the pair (in-phase, quadrature) over cycles, by
 * Welford's update (Technometrics 4, 1962, p. 419): no sums of squares, so nothing cancels. Planes
 * of sums of squared deviations are to be divided by (cycles - 1). Not thread-safe.
 */
final class ChannelMoments {
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
    cycles++;
    float share = 1f / cycles;
    for (int i = 0; i < meanI.length; i++) {
      float dI = inPhase[i] - meanI[i];
      float dC = quadrature[i] - meanC[i];
      meanI[i] += dI * share;
      meanC[i] += dC * share;
      float rest = 1 - share;
      squaresI[i] += dI * dI * rest;
      squaresC[i] += dC * dC * rest;
      products[i] += dI * dC * rest;
    }
  }

  /** Takes planes out of the means; the scatter stays. */
  void subtractFromMeans(float[] inPhase, float[] quadrature) {
    for (int i = 0; i < meanI.length; i++) {
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

  /** Copies the state of another into this one. */
  void copyFrom(ChannelMoments other) {
    cycles = other.cycles;
    System.arraycopy(other.meanI, 0, meanI, 0, meanI.length);
    System.arraycopy(other.meanC, 0, meanC, 0, meanC.length);
    System.arraycopy(other.squaresI, 0, squaresI, 0, squaresI.length);
    System.arraycopy(other.squaresC, 0, squaresC, 0, squaresC.length);
    System.arraycopy(other.products, 0, products, 0, products.length);
  }
}
