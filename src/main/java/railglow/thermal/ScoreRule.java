package railglow.thermal;

import java.util.Arrays;

/**
 * How the moments of one width become a normal score at one look: typical noise, directions, and
 * the tables made from them. Made once per width and look, used for every pixel. Not thread-safe.
 */
final class ScoreRule {
  /**
   * Scatter of this share of a pixel's own signal is laid to the signal: pulses and labels are not
   * perfectly even, and the first cycles of a slow body are not like the later ones.
   */
  static final double WOBBLE = 0.1;

  /** With fewer the scatter of the other cycles says nothing. */
  private static final int LEAST_DEGREES = 3;

  private final PooledNoise noise;
  private final DelayArc arc;
  private final int degrees;
  private final Doubt all;
  private final WildMap wildLater;
  private final float[] perDeviation;
  private Doubt later;

  /**
   * @param moments at this width, all of the picture, in units of {@code perDeviation}
   * @param scale 0 at pixels without data
   * @param perDeviation see {@link LineNoise}; null where no line stands out
   */
  ScoreRule(
      PooledNoise noise,
      DelayArc arc,
      ChannelMoments moments,
      float[] scale,
      int width,
      double sigma,
      float[] perDeviation) {
    this.noise = noise;
    this.perDeviation = perDeviation;
    this.arc = arc;
    this.degrees = moments.cycles() - 1;
    boolean isWild = noise.isLocal();
    WildMap wild = isWild ? WildMap.of(moments, scale, width, sigma, noise, false) : null;
    all = Doubt.of(degrees + 1, noise, wild);
    wildLater =
        isWild && degrees >= LEAST_DEGREES
            ? WildMap.of(moments, scale, width, sigma, noise, true)
            : null;
  }

  private ScoreRule(ScoreRule other, DelayArc arc) {
    noise = other.noise;
    this.arc = arc;
    degrees = other.degrees;
    all = other.all;
    wildLater = other.wildLater;
    perDeviation = other.perDeviation;
    later = other.later;
  }

  /** The same for the opposite directions. */
  ScoreRule mirrored() {
    return new ScoreRule(this, arc.mirrored());
  }

  /** Brings moments into the units of this rule. */
  void evenOut(ChannelMoments moments, int from, int to) {
    if (perDeviation != null) {
      moments.evenOut(perDeviation, from, to);
    }
  }

  /** Moderated degrees of freedom, never more than those of the typical variance itself. */
  static double totalDegrees(PooledNoise noise, int degrees) {
    return Math.min(noise.priorDegrees() + degrees, Math.max(degrees, noise.pooledDegrees()));
  }

  /**
   * For pixels from one to before another the largest score over the directions; below 3 within
   * 2e-5 of what the tables say.
   */
  void scores(ChannelMoments moments, float[] into, int from, int to) {
    Arrays.fill(into, from, to, Float.NEGATIVE_INFINITY);
    for (int j = 0; j < arc.directions(); j++) {
      largest(moments, into, (float) arc.weightI()[j], (float) arc.weightC()[j], from, to);
    }
    for (int i = from; i < to; i++) {
      float t = (float) Math.sqrt(Math.abs(into[i]));
      into[i] = Math.copySign(all.shared().near(t), into[i]);
    }
  }

  /** Signed squares of the moderated t along one direction, the largest so far kept. */
  private void largest(ChannelMoments moments, float[] best, float a, float b, int from, int to) {
    float k = moments.cycles();
    boolean alike = Double.isInfinite(noise.priorDegrees());
    float prior = alike ? 1 : (float) (noise.priorDegrees() / (noise.priorDegrees() + degrees));
    float share = alike ? 0 : (float) (1 / (noise.priorDegrees() + degrees));
    float inflated = (float) Math.sqrt(noise.scatterToMeanI()) * a;
    float shareI = share * inflated * inflated;
    float shareC = share * b * b;
    float shareIC = 2 * share * inflated * b;
    float[] meanI = moments.meanI();
    float[] meanC = moments.meanC();
    if (alike) {
      for (int i = from; i < to; i++) {
        float y = a * meanI[i] + b * meanC[i];
        best[i] = Math.max(best[i], k * y * Math.abs(y));
      }
      return;
    }
    float[] sII = moments.squaresI();
    float[] sCC = moments.squaresC();
    float[] sIC = moments.products();
    for (int i = from; i < to; i++) {
      float y = a * meanI[i] + b * meanC[i];
      float variance = prior + shareI * sII[i] + shareC * sCC[i] + shareIC * sIC[i];
      best[i] = Math.max(best[i], k * y * Math.abs(y) / variance);
    }
  }

  /**
   * The largest score over the arc, each direction weighed against the pixel's own scatter. The
   * first cycle of a body that starts cold is not like the others: where the others alone leave
   * less doubt, they count.
   */
  double doubted(int i, ChannelMoments m) {
    double best = Double.NEGATIVE_INFINITY;
    double whole = m.whitened(i, noise, false) / (2 * degrees);
    double wholeLater = degrees > 1 ? m.whitened(i, noise, true) / (2 * (degrees - 1)) : 0;
    for (int j = 0; j < arc.directions(); j++) {
      double a = arc.weightI()[j];
      double b = arc.weightC()[j];
      double mean = a * m.meanI()[i] + b * m.meanC()[i];
      double aa = Math.sqrt(noise.scatterToMeanI()) * a;
      double squares =
          aa * aa * m.squaresI()[i] + b * b * m.squaresC()[i] + 2 * aa * b * m.products()[i];
      double score = all.plain(mean, squares, noise);
      if (score > best && score > 1) {
        double doubted = all.weighed(i, score, mean, squares, whole);
        boolean others = doubted < score && degrees >= LEAST_DEGREES;
        score =
            others
                ? Math.max(
                    doubted,
                    withoutFirst(i, score, mean, squares, m.firstDeviation(i, a, b), wholeLater))
                : doubted;
      }
      best = Math.max(best, score);
    }
    return best;
  }

  /** Never above the score of all. */
  private double withoutFirst(
      int i, double score, double mean, double squares, double deviation, double whole) {
    if (later == null) {
      later = Doubt.of(degrees, noise, wildLater);
    }
    double laterMean = mean - deviation / degrees;
    double laterSquares = Math.max(0, squares - deviation * deviation * (degrees + 1) / degrees);
    double plain = Math.min(score, later.plain(laterMean, laterSquares, noise));
    return plain > 1 ? later.weighed(i, plain, laterMean, laterSquares, whole) : plain;
  }

  /**
   * What scores are worth that rest on so many cycles.
   *
   * @param places where pixels are wild; null where none is seen
   */
  private record Doubt(
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
          NormalScore.Table.of(totalDegrees(noise, degrees)),
          NormalScore.Table.of(degrees),
          WildPixels.of(degrees, noise.priorDegrees()),
          WildPixels.of(2.0 * degrees, noise.priorDegrees()),
          places,
          noise.wildShare());
    }

    /** By the moderated t alone. */
    double plain(double mean, double squares, PooledNoise noise) {
      double prior = noise.priorDegrees();
      double y = mean * Math.sqrt(cycles);
      return shared.score(
          Double.isInfinite(prior) ? y : y / Math.sqrt((prior + squares) / (prior + cycles - 1)));
    }

    /**
     * The same as a mixture with the pixel's own t, see WildPixels. Of many directions there is
     * always one along which a wild pixel scatters little, so what it does along the others counts.
     *
     * @param whole the pixel's variance over the typical one, both channels together
     */
    double weighed(int pixel, double score, double mean, double squares, double whole) {
      double variance = squares / (cycles - 1);
      double wobble = WOBBLE * WOBBLE * mean * mean;
      double own = mean * Math.sqrt(cycles / Math.max(variance, 1e-12));
      double share = places == null ? leastShare : places.shareAt(pixel);
      double chance =
          Math.max(
              wildAlong.chance(besides(variance, wobble), share),
              wildInAll.chance(besides(whole, wobble / 2), share));
      return WildPixels.score(score, ownTable.score(own), chance);
    }

    /** What is left of a variance without the share laid to the signal. */
    private static double besides(double variance, double wobble) {
      return Math.max(variance - wobble, Math.min(variance, 1));
    }
  }
}
