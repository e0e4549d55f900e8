package railglow.thermal;

import java.util.Arrays;

/**
 * For every pixel the largest normal score over widths and directions, and the width at which it
 * was reached. Mutable, not thread-safe.
 */
final class ScoreField {
  /** Lower scores are no candidates for anything. */
  static final float WORTH_A_SECOND_LOOK = 3;

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

  /** Whether any score is at least so high. */
  boolean reaches(double bound) {
    for (float score : scores) {
      if (score >= bound) {
        return true;
      }
    }
    return false;
  }

  /** Whether no pixel next to it scores higher. */
  boolean isPeak(int pixel) {
    int column = pixel % width;
    int row = pixel / width;
    int height = scores.length / width;
    for (int y = Math.max(0, row - 1); y <= Math.min(height - 1, row + 1); y++) {
      for (int x = Math.max(0, column - 1); x <= Math.min(width - 1, column + 1); x++) {
        if (scores[y * width + x] > scores[pixel]) {
          return false;
        }
      }
    }
    return true;
  }

  int widthIndexAt(int pixel) {
    return widthIndex[pixel];
  }

  /** Takes in the tests of one width in an area, row by row: a row's planes fit into the cache. */
  void include(int index, ChannelMoments moments, float[] scale, ScoreRule rule, Area area) {
    include(index, moments, scale, rule, area, WORTH_A_SECOND_LOOK);
  }

  /**
   * As above.
   *
   * @param doubtedFrom what is lower is left as it is before any doubt, which never raises a score
   */
  void include(
      int index,
      ChannelMoments moments,
      float[] scale,
      ScoreRule rule,
      Area area,
      float doubtedFrom) {
    for (int row = area.top(); row < area.bottom(); row++) {
      int from = row * width + area.left();
      int to = row * width + area.right();
      rule.scores(moments, newScores, from, to);
      for (int i = from; i < to; i++) {
        float score = scale[i] > 0 ? newScores[i] : Float.NEGATIVE_INFINITY;
        if (score > doubtedFrom && score > scores[i]) {
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
