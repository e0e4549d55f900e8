package railglow.thermal;

import java.util.Arrays;

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
  private float[] takenI;
  private float[] takenC;
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
    if (takenI != null) {
      Arrays.fill(takenI, from, to, 0);
      Arrays.fill(takenC, from, to, 0);
    }
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

  /** Takes planes out of the means and of the first cycle; the scatter stays. */
  void subtractFromMeans(float[] inPhase, float[] quadrature, int from, int to) {
    if (takenI == null) {
      takenI = new float[meanI.length];
      takenC = new float[meanC.length];
    }
    System.arraycopy(inPhase, from, takenI, from, to - from);
    System.arraycopy(quadrature, from, takenC, from, to - from);
    for (int i = from; i < to; i++) {
      meanI[i] -= inPhase[i];
      meanC[i] -= quadrature[i];
    }
  }

  /**
   * Measures the pixels from one to before another in units of a deviation of their own, until set
   * anew; nothing may be taken out of the means afterwards.
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

  /** How far the first cycle is from the mean of all along a I + b C. */
  double firstDeviation(int i, double a, double b) {
    float each = evening == null ? 1 : evening[i];
    double dI = each * firstI[i] - meanI[i] - (takenI == null ? 0 : each * takenI[i]);
    double dC = each * firstC[i] - meanC[i] - (takenC == null ? 0 : each * takenC[i]);
    return a * dI + b * dC;
  }

  /** trace(N^-1 S) of a pixel's sums of squares S for a noise N. */
  double whitened(int i, PooledNoise noise, boolean withoutFirst) {
    double ii = squaresI[i];
    double cc = squaresC[i];
    double ic = products[i];
    if (withoutFirst) {
      double dI = firstDeviation(i, 1, 0);
      double dC = firstDeviation(i, 0, 1);
      double per = cycles / (cycles - 1.0);
      ii = Math.max(0, ii - per * dI * dI);
      cc = Math.max(0, cc - per * dC * dC);
      ic -= per * dI * dC;
    }
    double determinant =
        noise.varianceI() * noise.varianceC() - noise.covariance() * noise.covariance();
    return (noise.varianceC() * ii + noise.varianceI() * cc - 2 * noise.covariance() * ic)
        / determinant;
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
