package railglow.thermal;

/**
 * What scores are worth that rest on so many cycles.
 *
 * @param places where pixels are wild; null where none is seen
 */
record Doubt(
    int cycles,
    NormalScore.Table shared,
    NormalScore.Table ownTable,
    WildPixels wildAlong,
    WildPixels wildInAll,
    WildMap places,
    double leastShare) {
  static Doubt of(int cycles, PooledNoise noise, WildMap places) {
    int degrees = cycles - 1;
    return new Doubt(
        cycles,
        NormalScore.Table.of(ScoreRule.totalDegrees(noise, degrees)),
        NormalScore.Table.of(degrees),
        WildPixels.of(degrees, noise.priorDegrees()),
        WildPixels.of(2.0 * degrees, noise.priorDegrees()),
        places,
        noise.wildShare());
  }

  /** By the moderated t alone. */
  double plain(double mean, double squares, PooledNoise noise) {
    return shared.score(t(mean, squares, noise));
  }

  /** The moderated t. */
  double t(double mean, double squares, PooledNoise noise) {
    double prior = noise.priorDegrees();
    double y = mean * Math.sqrt(cycles);
    return Double.isInfinite(prior) ? y : y / Math.sqrt((prior + squares) / (prior + cycles - 1));
  }

  /** The t by the pixel's own scatter along a direction. */
  double ownT(double mean, double squares) {
    return mean * Math.sqrt(cycles / Math.max(squares / (cycles - 1), 1e-12));
  }

  /** Of wild pixels around a pixel. */
  double shareAt(int pixel) {
    return places == null ? leastShare : places.shareAt(pixel);
  }

  /**
   * The score of the moderated t as a mixture with the pixel's own, see WildPixels. Of many
   * directions there is always one along which a wild pixel scatters little, so what it does along
   * the others counts.
   *
   * @param whole the pixel's variance over the typical one, both channels together
   * @param share of wild pixels around
   */
  void weigh(
      double score, double mean, double squares, double whole, double share, LargestScore best) {
    double variance = squares / (cycles - 1);
    double wobble = ScoreRule.WOBBLE * ScoreRule.WOBBLE * mean * mean;
    double chance =
        Math.max(
            wildAlong.chance(besides(variance, wobble), share),
            wildInAll.chance(besides(whole, wobble / 2), share));
    WildPixels.takeScore(score, ownTable.score(ownT(mean, squares)), chance, best);
  }

  /** What is left of a variance without the share laid to the signal. */
  private static double besides(double variance, double wobble) {
    return Math.max(variance - wobble, Math.min(variance, 1));
  }
}
