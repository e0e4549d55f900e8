package railglow.thermal;

/**
 * The moments of one pixel, see {@link ChannelMoments}. Immutable.
 *
 * @param squaresI sum of the squared deviations of the in-phase channel over the cycles, and so on
 * @param firstI how far the first cycle is from the mean of all
 * @param firstC likewise
 */
record PixelMoments(
    int cycles,
    float meanI,
    float meanC,
    float squaresI,
    float squaresC,
    float products,
    float firstI,
    float firstC) {

  /** How far the first cycle is from the mean of all along a I + b C. */
  double firstDeviation(double a, double b) {
    return a * firstI + b * firstC;
  }

  /** trace(N^-1 S) of the sums of squares S for a noise N. */
  double whitened(PooledNoise noise, boolean withoutFirst) {
    double ii = squaresI;
    double cc = squaresC;
    double ic = products;
    if (withoutFirst) {
      double per = cycles / (cycles - 1.0);
      ii = Math.max(0, ii - per * firstI * firstI);
      cc = Math.max(0, cc - per * firstC * firstC);
      ic -= per * firstI * firstC;
    }
    double determinant =
        noise.varianceI() * noise.varianceC() - noise.covariance() * noise.covariance();
    return (noise.varianceC() * ii + noise.varianceI() * cc - 2 * noise.covariance() * ic)
        / determinant;
  }
}
