package railglow.thermal;

import java.util.Arrays;

/**
 * For every pixel the largest normal score over widths and directions, and the width at which it
 * was reached. Mutable, not thread-safe.
 */
final class ScoreField {
  private final float[] scores;
  private final byte[] widthIndex;
  private final float[] squaredScores;
  private final int[] outliers;

  ScoreField(int pixels) {
    scores = new float[pixels];
    widthIndex = new byte[pixels];
    squaredScores = new float[pixels];
    outliers = new int[pixels];
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
    int strange = listOutliers(moments, noise);
    Arrays.fill(squaredScores, Float.NEGATIVE_INFINITY);
    for (int j = 0; j < arc.directions(); j++) {
      largest(moments, noise, (float) arc.weightI()[j], (float) arc.weightC()[j]);
    }
    NormalScore.Table own = new NormalScore.Table(degrees);
    double total = totalDegrees(noise, degrees);
    NormalScore.Table shared = new NormalScore.Table(total);
    for (int k = 0; k < strange; k++) {
      squaredScores[outliers[k]] = ownSquare(outliers[k], moments, noise, arc, own, shared);
    }
    boolean known = total >= NormalScore.KNOWN;
    for (int i = 0; i < scores.length; i++) {
      if (scale[i] > 0) {
        float t = (float) Math.sqrt(Math.abs(squaredScores[i]));
        float score = Math.copySign(known ? t : shared.of(t), squaredScores[i]);
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

  /**
   * Pixels whose whitened scatter is beyond the family's limit L in some direction: its larger
   * eigenvalue is above L when L^2 - trace L + determinant is negative or the trace above 2 L.
   */
  private int listOutliers(ChannelMoments m, PooledNoise noise) {
    double determinant =
        noise.varianceI() * noise.varianceC() - noise.covariance() * noise.covariance();
    int degrees = m.cycles() - 1;
    float i11 = (float) (noise.varianceC() / (determinant * degrees));
    float i22 = (float) (noise.varianceI() / (determinant * degrees));
    float i12 = (float) (-2 * noise.covariance() / (determinant * degrees));
    float perDeterminant = (float) (1 / (determinant * degrees * degrees));
    float limit = (float) noise.outlierVariance();
    float[] sII = m.squaresI();
    float[] sCC = m.squaresC();
    float[] sIC = m.products();
    int n = 0;
    for (int i = 0; i < outliers.length; i++) {
      float trace = i11 * sII[i] + i22 * sCC[i] + i12 * sIC[i];
      float scatter = (sII[i] * sCC[i] - sIC[i] * sIC[i]) * perDeterminant;
      if (trace > limit && (trace > 2 * limit || limit * (limit - trace) + scatter < 0)) {
        outliers[n++] = i;
      }
    }
    return n;
  }

  /**
   * The largest signed square of t over the arc, each direction with its own scatter if strange.
   */
  private static float ownSquare(
      int i,
      ChannelMoments m,
      PooledNoise noise,
      DelayArc arc,
      NormalScore.Table own,
      NormalScore.Table shared) {
    int degrees = m.cycles() - 1;
    double best = Double.NEGATIVE_INFINITY;
    for (int j = 0; j < arc.directions(); j++) {
      double a = arc.weightI()[j];
      double b = arc.weightC()[j];
      double y = (a * m.meanI()[i] + b * m.meanC()[i]) * Math.sqrt(m.cycles());
      double squares =
          a * a * m.squaresI()[i] + b * b * m.squaresC()[i] + 2 * a * b * m.products()[i];
      double t;
      if (squares > noise.outlierVariance() * degrees) {
        t = shared.inverse(own.of(y / Math.sqrt(squares / degrees)));
      } else if (Double.isInfinite(noise.priorDegrees())) {
        t = y;
      } else {
        double prior = noise.priorDegrees();
        t = y / Math.sqrt((prior + squares) / (prior + degrees));
      }
      best = Math.max(best, t);
    }
    return (float) (best * Math.abs(best));
  }
}
