package railglow.thermal;

import org.apache.commons.statistics.distribution.ChiSquaredDistribution;

/**
 * Where the picture can be trusted: pixels that answer alike in every cycle have 1; those that
 * scatter more than chance allows (a reflection, an edge that moves, a flickering pixel) have less,
 * as the share of their scatter that the typical noise explains. Stateless.
 */
final class TrustMap {
  private static final double CHANCE = 1e-3;

  private TrustMap() {}

  static Plane of(ChannelMoments m, PooledNoise noise, int width, int height) {
    int degrees = m.cycles() - 1;
    float[] trust = new float[width * height];
    double determinant =
        noise.varianceI() * noise.varianceC() - noise.covariance() * noise.covariance();
    double per = 1 / (2 * determinant * degrees);
    double limit =
        ChiSquaredDistribution.of(2.0 * degrees).inverseSurvivalProbability(CHANCE)
            / (2.0 * degrees);
    for (int i = 0; i < trust.length; i++) {
      double scatter =
          per
              * (noise.varianceC() * m.squaresI()[i]
                  + noise.varianceI() * m.squaresC()[i]
                  - 2 * noise.covariance() * m.products()[i]);
      trust[i] = scatter > limit ? (float) (limit / scatter) : 1;
    }
    return new Plane(width, height, trust);
  }
}
