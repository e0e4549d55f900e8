package railglow.thermal;

import java.util.Arrays;

/**
 * What one look knows about the noise at one filter width. Immutable.
 *
 * @param sigma of the filter, pixels
 * @param fieldSigma of the noise field: removed row and column means leave it a little rougher
 * @param noise typical covariance of the normalised output, per cycle
 * @param arc directions searched
 * @param degrees cycles - 1
 */
record WidthStatistics(
    double sigma, double fieldSigma, PooledNoise noise, DelayArc arc, int degrees) {
  /** Share of a score that is left between pixels and between directions. */
  private static final double KEPT_BETWEEN = 0.97;

  private static final double POWER_95 = 1.6448536269514722;

  /** Degrees of freedom of the t statistics. */
  double totalDegrees() {
    return ScoreRule.totalDegrees(noise, degrees);
  }

  /** The family of all tests of a look; null when no width has any noise to measure with. */
  static FieldFamily family(WidthStatistics[] all, int width, int height) {
    WidthStatistics[] known =
        Arrays.stream(all).filter(s -> s != null).toArray(WidthStatistics[]::new);
    if (known.length == 0) {
      return null;
    }
    double arc = 0;
    int directions = 1;
    double[] sigmas = new double[known.length];
    double[] degrees = new double[known.length];
    for (int w = 0; w < known.length; w++) {
      sigmas[w] = known[w].fieldSigma;
      degrees[w] = known[w].totalDegrees();
      arc = Math.max(arc, known[w].arc.radians());
      directions = Math.max(directions, known[w].arc.directions());
    }
    return new FieldFamily(width, height, sigmas, degrees, arc, directions);
  }

  /**
   * The swing that would have been called with 95 % probability, wherever it is: at the narrowest
   * width that has noise to measure with, since a wider source of the same swing is seen sooner, on
   * the noisiest line, and at the most favourable time constant searched.
   *
   * @param lines that have noise of their own; null where none stands out
   */
  static double upperLimit(
      WidthStatistics[] all,
      WidthPlanes[] widths,
      DetectionSettings settings,
      CommonParts.Removed removed,
      LineNoise lines,
      double bound) {
    int w = 0;
    while (w < all.length - 1 && all[w] == null) {
      w++;
    }
    if (all[w] == null || Double.isInfinite(bound)) {
      return Double.POSITIVE_INFINITY;
    }
    WidthStatistics s = all[w];
    double t = NormalScore.toT(bound, s.totalDegrees()) + POWER_95;
    double best = 0;
    for (double tau : settings.bodyTimeConstantsSeconds()) {
      FirstOrderResponse g = settings.response(tau);
      best = Math.max(best, s.unitSignal(g));
    }
    MatchedFilter filter = widths[w].filter();
    double gain = Math.sqrt(filter.amplitudeLeft(removed)) / filter.leastScale();
    double noisier = lines == null ? 1 : lines.worstDeviation(s.sigma);
    return noisier * t / (KEPT_BETWEEN * best * gain * Math.sqrt(s.degrees + 1.0));
  }

  /** Length of a response of one kelvin, whitened: its signal to noise ratio per cycle. */
  double unitSignal(FirstOrderResponse g) {
    double i = g.inPhase();
    double c = g.quadrature();
    double determinant =
        noise.varianceI() * noise.varianceC() - noise.covariance() * noise.covariance();
    double square =
        (noise.varianceC() * i * i + noise.varianceI() * c * c - 2 * noise.covariance() * i * c)
            / determinant;
    return Math.sqrt(Math.max(0, square));
  }
}
