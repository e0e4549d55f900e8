package railglow.thermal;

import java.util.Arrays;

/**
 * For every pixel the largest normal score over widths and directions, and the width at which it
 * was reached. Mutable, not thread-safe.
 */
final class ScoreField {
  /** Lower scores are no candidates for anything. */
  private static final float WORTH_A_SECOND_LOOK = 3;

  private final int width;
  private final float[] scores;
  private final byte[] widthIndex;
  private final float[] newScores;

  ScoreField(int width, int height) {
    this.width = width;
    scores = new float[width * height];
    widthIndex = new byte[width * height];
    newScores = new float[width * height];
  }

  void clear(Area area) {
    for (int row = area.top(); row < area.bottom(); row++) {
      int start = row * width;
      Arrays.fill(scores, start + area.left(), start + area.right(), Float.NEGATIVE_INFINITY);
    }
  }

  float[] scores() {
    return scores;
  }

  int widthIndexAt(int pixel) {
    return widthIndex[pixel];
  }

  /** Takes in the tests of one width in an area, row by row: a row's planes fit into the cache. */
  void include(int index, ChannelMoments moments, float[] scale, ScoreRule rule, Area area) {
    for (int row = area.top(); row < area.bottom(); row++) {
      int from = row * width + area.left();
      int to = row * width + area.right();
      rule.scores(moments, newScores, from, to);
      for (int i = from; i < to; i++) {
        float score = scale[i] > 0 ? newScores[i] : Float.NEGATIVE_INFINITY;
        if (score > WORTH_A_SECOND_LOOK && score > scores[i]) {
          score = (float) rule.doubted(i, moments);
        }
        // no branch: which width wins is a toss-up that no processor can guess
        boolean wins = score > scores[i];
        widthIndex[i] = wins ? (byte) index : widthIndex[i];
        scores[i] = wins ? score : scores[i];
      }
    }
  }
}
