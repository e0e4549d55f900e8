package railglow.thermal;

import java.util.Arrays;

/**
 * For every pixel the largest normal score over widths and directions, and the width at which it
 * was reached. Mutable, not thread-safe.
 */
final class ScoreField {
  /** Lower scores are no candidates for anything. */
  private static final float WORTH_A_SECOND_LOOK = 3;

  /**
   * Scatter of this share of a pixel's own signal is laid to the signal: pulses and labels are not
   * perfectly even, and the first cycles of a slow body are not like the later ones.
   */
  static final double WOBBLE = 0.1;

  private final float[] scores;
  private final byte[] widthIndex;
  private final float[] squaredScores;

  ScoreField(int pixels) {
    scores = new float[pixels];
    widthIndex = new byte[pixels];
    squaredScores = new float[pixels];
  }

  void clear() {
    Arrays.fill(scores, Float.NEGATIVE_INFINITY);
  }

  float[] scores() {
    return scores;
  }

  int widthIndexAt(int pixel) {
    return widthIndex[pixel];
  }

  /** Takes in the tests of one width. */
  void include(int index, ChannelMoments moments, float[] scale, PooledNoise noise, DelayArc arc) {
    int degrees = moments.cycles() - 1;
    Arrays.fill(squaredScores, Float.NEGATIVE_INFINITY);
    for (int j = 0; j < arc.directions(); j++) {
      largest(moments, noise, (float) arc.weightI()[j], (float) arc.weightC()[j]);
    }
    WildPixels wild = new WildPixels(noise, degrees);
    double total = totalDegrees(noise, degrees);
    NormalScore.Table shared = new NormalScore.Table(total);
    boolean known = total >= NormalScore.KNOWN;
    for (int i = 0; i < scores.length; i++) {
      if (scale[i] > 0) {
        float t = (float) Math.sqrt(Math.abs(squaredScores[i]));
        float score = Math.copySign(known ? t : shared.of(t), squaredScores[i]);
        if (score > WORTH_A_SECOND_LOOK && score > scores[i]) {
          score = (float) doubted(i, moments, noise, arc, shared, wild);
        }
        if (score > scores[i]) {
          scores[i] = score;
          widthIndex[i] = (byte) index;
        }
      }
    }
  }

  /** Moderated degrees of freedom, never more than those of the typical variance itself. */
  static double totalDegrees(PooledNoise noise, int degrees) {
    return Math.min(noise.priorDegrees() + degrees, Math.max(degrees, noise.pooledDegrees()));
  }

  /** Signed squares of the moderated t along one direction, the largest so far kept. */
  private void largest(ChannelMoments moments, PooledNoise noise, float a, float b) {
    int degrees = moments.cycles() - 1;
    float k = moments.cycles();
    boolean alike = Double.isInfinite(noise.priorDegrees());
    float prior = alike ? 1 : (float) (noise.priorDegrees() / (noise.priorDegrees() + degrees));
    float share = alike ? 0 : (float) (1 / (noise.priorDegrees() + degrees));
    float shareI = share * a * a;
    float shareC = share * b * b;
    float shareIC = 2 * share * a * b;
    float[] meanI = moments.meanI();
    float[] meanC = moments.meanC();
    float[] best = squaredScores;
    if (alike) {
      for (int i = 0; i < best.length; i++) {
        float y = a * meanI[i] + b * meanC[i];
        best[i] = Math.max(best[i], k * y * Math.abs(y));
      }
      return;
    }
    float[] sII = moments.squaresI();
    float[] sCC = moments.squaresC();
    float[] sIC = moments.products();
    for (int i = 0; i < best.length; i++) {
      float y = a * meanI[i] + b * meanC[i];
      float variance = prior + shareI * sII[i] + shareC * sCC[i] + shareIC * sIC[i];
      best[i] = Math.max(best[i], k * y * Math.abs(y) / variance);
    }
  }

  /** The largest score over the arc, each direction weighed against the pixel's own scatter. */
  private static double doubted(
      int i,
      ChannelMoments m,
      PooledNoise noise,
      DelayArc arc,
      NormalScore.Table shared,
      WildPixels wild) {
    int degrees = m.cycles() - 1;
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
