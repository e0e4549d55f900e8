package railglow.thermal;

import java.util.Arrays;

/**
 * For every pixel the largest normal score over widths and directions, and where it was reached.
 * Mutable, not thread-safe.
 */
final class ScoreField {
  private final float[] scores;
  private final byte[] widthIndex;
  private final byte[] direction;
  private final float[] here;
  private final byte[] hereDirection;

  ScoreField(int pixels) {
    scores = new float[pixels];
    widthIndex = new byte[pixels];
    direction = new byte[pixels];
    here = new float[pixels];
    hereDirection = new byte[pixels];
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

  int directionAt(int pixel) {
    return direction[pixel];
  }

  /** Takes in the tests of one width. */
  void include(int index, ChannelMoments moments, float[] scale, PooledNoise noise, DelayArc arc) {
    int degrees = moments.cycles() - 1;
    double total = totalDegrees(noise, degrees);
    NormalScore.Table shared = new NormalScore.Table(total);
    NormalScore.Table own = new NormalScore.Table(degrees);
    Arrays.fill(here, Float.NEGATIVE_INFINITY);
    for (int j = 0; j < arc.directions(); j++) {
      largest(moments, noise, (float) arc.weightI()[j], (float) arc.weightC()[j], j, own);
    }
    boolean known = total >= 1e6;
    for (int i = 0; i < here.length; i++) {
      if (scale[i] > 0) {
        float score = known ? here[i] : shared.of(here[i]);
        if (score > scores[i]) {
          scores[i] = score;
          widthIndex[i] = (byte) index;
          direction[i] = hereDirection[i];
        }
      }
    }
  }

  /** Moderated degrees of freedom, never more than those of the typical variance itself. */
  static double totalDegrees(PooledNoise noise, int degrees) {
    return Math.min(noise.priorDegrees() + degrees, Math.max(degrees, noise.pooledDegrees()));
  }

  private void largest(
      ChannelMoments moments, PooledNoise noise, float a, float b, int j, NormalScore.Table own) {
    int degrees = moments.cycles() - 1;
    float root = (float) Math.sqrt(moments.cycles());
    boolean alike = Double.isInfinite(noise.priorDegrees());
    float prior = alike ? 1 : (float) (noise.priorDegrees() / (noise.priorDegrees() + degrees));
    float ownShare = alike ? 0 : (float) (1 / (noise.priorDegrees() + degrees));
    float perDegree = 1f / degrees;
    float outlier = (float) noise.outlierVariance();
    float[] meanI = moments.meanI();
    float[] meanC = moments.meanC();
    float[] sII = moments.squaresI();
    float[] sCC = moments.squaresC();
    float[] sIC = moments.products();
    for (int i = 0; i < here.length; i++) {
      float y = (a * meanI[i] + b * meanC[i]) * root;
      float squares = a * a * sII[i] + b * b * sCC[i] + 2 * a * b * sIC[i];
      float t;
      if (squares * perDegree > outlier) {
        // in units of the shared t: what matters is the score, and own t is scored by its own table
        t = own.of(y / Math.sqrt(squares * perDegree));
      } else {
        t = alike ? y : (float) (y / Math.sqrt(prior + ownShare * squares));
      }
      if (t > here[i]) {
        here[i] = t;
        hereDirection[i] = (byte) j;
      }
    }
  }
}
