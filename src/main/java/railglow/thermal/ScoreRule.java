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

  /** Far more than tables are off. */
  private static final double OFF = 0.98;

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
   * For pixels from one to before another the signed square of the moderated t along the direction
   * in which it is largest.
   */
  void squares(ChannelMoments moments, float[] into, int from, int to) {
    Arrays.fill(into, from, to, Float.NEGATIVE_INFINITY);
    for (int j = 0; j < arc.directions(); j++) {
      Direction along = Direction.of((float) arc.weightI()[j], (float) arc.weightC()[j], this);
      if (Double.isInfinite(noise.priorDegrees())) {
        along.keepLargestOfAlike(moments, into, from, to);
      } else {
        along.keepLargest(moments, into, from, to);
      }
    }
  }

  /**
   * The same, and that of the opposite directions: of each direction once.
   *
   * @param work overwritten at these pixels
   */
  void squares(
      ChannelMoments moments, float[] into, float[] mirrored, float[] work, int from, int to) {
    Arrays.fill(into, from, to, Float.NEGATIVE_INFINITY);
    Arrays.fill(mirrored, from, to, Float.NEGATIVE_INFINITY);
    for (int j = 0; j < arc.directions(); j++) {
      Direction.of((float) arc.weightI()[j], (float) arc.weightC()[j], this)
          .squares(moments, work, from, to);
      for (int i = from; i < to; i++) {
        into[i] = Math.max(into[i], work[i]);
      }
      for (int i = from; i < to; i++) {
        mirrored[i] = Math.max(mirrored[i], -work[i]);
      }
    }
  }

  /** The score of such a square; below 3 within 2e-5 of what the tables say. */
  float score(float square) {
    float t = (float) Math.sqrt(Math.abs(square));
    return Math.copySign(all.shared().near(t), square);
  }

  /** No smaller square has a score as high, by far more than tables are off. */
  float squareBelow(double score) {
    double t = OFF * NormalScore.toT(score, totalDegrees(noise, degrees));
    return (float) (t * t);
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
   * Signed squares of the moderated t along a I + b C, the largest so far kept. Short loops over
   * one index, for the JIT compiler to make vectors of (decision 0090).
   *
   * @param prior what the typical variance has in a pixel's
   * @param shareI what the in-phase channel's scatter has, and so on
   */
  private record Direction(
      float a, float b, float prior, float shareI, float shareC, float shareIC) {
    static Direction of(float a, float b, ScoreRule rule) {
      double degrees = rule.noise.priorDegrees();
      boolean alike = Double.isInfinite(degrees);
      float prior = alike ? 1 : (float) (degrees / (degrees + rule.degrees));
      float share = alike ? 0 : (float) (1 / (degrees + rule.degrees));
      float inflated = (float) Math.sqrt(rule.noise.scatterToMeanI()) * a;
      return new Direction(
          a, b, prior, share * inflated * inflated, share * b * b, 2 * share * inflated * b);
    }

    /** Where no pixel's own scatter counts. */
    void keepLargestOfAlike(ChannelMoments moments, float[] best, int from, int to) {
      float k = moments.cycles();
      float[] meanI = moments.meanI();
      float[] meanC = moments.meanC();
      float weightI = a;
      float weightC = b;
      for (int i = from; i < to; i++) {
        float y = weightI * meanI[i] + weightC * meanC[i];
        best[i] = Math.max(best[i], k * y * Math.abs(y));
      }
    }

    void keepLargest(ChannelMoments moments, float[] best, int from, int to) {
      float k = moments.cycles();
      float[] meanI = moments.meanI();
      float[] meanC = moments.meanC();
      float[] sII = moments.squaresI();
      float[] sCC = moments.squaresC();
      float[] sIC = moments.products();
      float weightI = a;
      float weightC = b;
      float least = prior;
      float ofI = shareI;
      float ofC = shareC;
      float ofIC = shareIC;
      for (int i = from; i < to; i++) {
        float y = weightI * meanI[i] + weightC * meanC[i];
        float variance = least + ofI * sII[i] + ofC * sCC[i] + ofIC * sIC[i];
        best[i] = Math.max(best[i], k * y * Math.abs(y) / variance);
      }
    }

    /** The squares alone. */
    void squares(ChannelMoments moments, float[] into, int from, int to) {
      float k = moments.cycles();
      float[] meanI = moments.meanI();
      float[] meanC = moments.meanC();
      float[] sII = moments.squaresI();
      float[] sCC = moments.squaresC();
      float[] sIC = moments.products();
      float weightI = a;
      float weightC = b;
      float least = prior;
      float ofI = shareI;
      float ofC = shareC;
      float ofIC = shareIC;
      for (int i = from; i < to; i++) {
        float y = weightI * meanI[i] + weightC * meanC[i];
        float variance = least + ofI * sII[i] + ofC * sCC[i] + ofIC * sIC[i];
        into[i] = k * y * Math.abs(y) / variance;
      }
    }
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
