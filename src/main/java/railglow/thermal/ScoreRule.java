package railglow.thermal;

import java.util.Arrays;

/**
 * How the moments of one width become a normal score at one look: typical noise, directions, and
 * the tables made from them. Made once per width and look, used for every pixel. Immutable.
 */
final class ScoreRule {
  /**
   * Scatter of this share of a pixel's own signal is laid to the signal: pulses and labels are not
   * perfectly even, and the first cycles of a slow body are not like the later ones.
   */
  static final double WOBBLE = 0.1;

  private final PooledNoise noise;
  private final DelayArc arc;
  private final int degrees;
  private final NormalScore.Table shared;
  private final WildPixels wild;

  /**
   * @param degrees cycles - 1
   */
  ScoreRule(PooledNoise noise, DelayArc arc, int degrees) {
    this.noise = noise;
    this.arc = arc;
    this.degrees = degrees;
    shared = new NormalScore.Table(totalDegrees(noise, degrees));
    wild = new WildPixels(noise, degrees);
  }

  /** Moderated degrees of freedom, never more than those of the typical variance itself. */
  static double totalDegrees(PooledNoise noise, int degrees) {
    return Math.min(noise.priorDegrees() + degrees, Math.max(degrees, noise.pooledDegrees()));
  }

  /**
   * For pixels from one to before another the largest score over the directions; below 3 within
   * 5e-6 of what the tables say.
   */
  void scores(ChannelMoments moments, float[] into, int from, int to) {
    Arrays.fill(into, from, to, Float.NEGATIVE_INFINITY);
    for (int j = 0; j < arc.directions(); j++) {
      largest(moments, into, (float) arc.weightI()[j], (float) arc.weightC()[j], from, to);
    }
    for (int i = from; i < to; i++) {
      float t = (float) Math.sqrt(Math.abs(into[i]));
      into[i] = Math.copySign(shared.near(t), into[i]);
    }
  }

  /** Signed squares of the moderated t along one direction, the largest so far kept. */
  private void largest(ChannelMoments moments, float[] best, float a, float b, int from, int to) {
    float k = moments.cycles();
    boolean alike = Double.isInfinite(noise.priorDegrees());
    float prior = alike ? 1 : (float) (noise.priorDegrees() / (noise.priorDegrees() + degrees));
    float share = alike ? 0 : (float) (1 / (noise.priorDegrees() + degrees));
    float shareI = share * a * a;
    float shareC = share * b * b;
    float shareIC = 2 * share * a * b;
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

  /** The largest score over the arc, each direction weighed against the pixel's own scatter. */
  double doubted(int i, ChannelMoments m) {
    double prior = noise.priorDegrees();
    double best = Double.NEGATIVE_INFINITY;
    for (int j = 0; j < arc.directions(); j++) {
      double a = arc.weightI()[j];
      double b = arc.weightC()[j];
      double y = (a * m.meanI()[i] + b * m.meanC()[i]) * Math.sqrt(m.cycles());
      double variance =
          (a * a * m.squaresI()[i] + b * b * m.squaresC()[i] + 2 * a * b * m.products()[i])
              / degrees;
      double moderated =
          Double.isInfinite(prior)
              ? y
              : y / Math.sqrt((prior + degrees * variance) / (prior + degrees));
      double score = shared.of(moderated);
      if (score > best && score > 1) {
        double wobble = WOBBLE * WOBBLE * y * y / m.cycles();
        double excess = Math.max(variance - wobble, Math.min(variance, 1));
        score = wild.score(score, y / Math.sqrt(Math.max(variance, 1e-12)), excess);
      }
      best = Math.max(best, score);
    }
    return best;
  }
}
