package railglow.thermal;

import org.apache.commons.statistics.distribution.ChiSquaredDistribution;

/**
 * Where the picture can be trusted: pixels that answer alike in every cycle have 1; those that
 * scatter more than chance and their own signal's unevenness allow (a reflection, an edge that
 * moves, a flickering pixel) have less, as the share of their scatter that these explain; pixels
 * that never change (dead, or saturated) have 0. Stateless.
 */
final class TrustMap {
  private static final double CHANCE = 1e-3;

  private TrustMap() {}

  /**
   * @param alive pixels that changed at least once
   */
  static Plane of(ChannelMoments m, PooledNoise noise, boolean[] alive, int width, int height) {
    int degrees = m.cycles() - 1;
    float[] trust = new float[width * height];
    double determinant =
        noise.varianceI() * noise.varianceC() - noise.covariance() * noise.covariance();
    double allowed =
        ChiSquaredDistribution.of(2.0 * degrees).inverseSurvivalProbability(CHANCE)
            / (2.0 * degrees);
    for (int i = 0; i < trust.length; i++) {
      double scatter =
          whitened(noise, determinant, m.squaresI()[i], m.squaresC()[i], m.products()[i]) / degrees;
      double iMean = m.meanI()[i];
      double cMean = m.meanC()[i];
      double signal = whitened(noise, determinant, iMean * iMean, cMean * cMean, iMean * cMean);
      double explained = allowed + ScoreRule.WOBBLE * ScoreRule.WOBBLE * signal;
      trust[i] = !alive[i] ? 0 : scatter > explained ? (float) (explained / scatter) : 1;
    }
    return new Plane(width, height, trust);
  }

  /** trace(S0^-1 S) / 2. */
  private static double whitened(
      PooledNoise noise, double determinant, double ii, double cc, double ic) {
    return (noise.varianceC() * ii + noise.varianceI() * cc - 2 * noise.covariance() * ic)
        / (2 * determinant);
  }
}
