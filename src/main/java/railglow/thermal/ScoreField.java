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
  private final int[] worthALook;

  ScoreField(int width, int height) {
    this.width = width;
    scores = new float[width * height];
    widthIndex = new byte[width * height];
    newScores = new float[width];
    worthALook = new int[width];
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

  /**
   * Takes in the tests of one width at pixels of a row, from one to before another.
   *
   * @param squares by the rule, at these pixels
   * @return the largest score that is worth a second look, or what is lower
   */
  float include(
      int index,
      ChannelMoments moments,
      float[] scale,
      ScoreRule rule,
      float[] squares,
      int from,
      int to) {
    for (int i = from, x = 0; i < to; i++, x++) {
      newScores[x] = rule.score(squares[i]);
    }
    int n = 0;
    for (int i = from, x = 0; i < to; i++, x++) {
      float score = scale[i] > 0 ? newScores[x] : Float.NEGATIVE_INFINITY;
      boolean wins = score > scores[i];
      if (wins && score > WORTH_A_SECOND_LOOK) {
        worthALook[n++] = i;
        continue;
      }
      // no branch: which width wins is a toss-up that no processor can guess
      widthIndex[i] = wins ? (byte) index : widthIndex[i];
      scores[i] = wins ? score : scores[i];
    }
    float most = WORTH_A_SECOND_LOOK;
    for (int k = 0; k < n; k++) {
      int i = worthALook[k];
      most = Math.max(most, take(i, index, doubted(rule, i, moments, scores[i])));
    }
    return most;
  }

  /**
   * The same at those pixels only whose square is so large; the others are left as they are.
   *
   * @return as above
   */
  float includeAbove(
      float least,
      int index,
      ChannelMoments moments,
      float[] scale,
      ScoreRule rule,
      float[] squares,
      int from,
      int to) {
    float most = WORTH_A_SECOND_LOOK;
    if (!(largest(squares, from, to) >= least)) {
      return most;
    }
    for (int i = from; i < to; i++) {
      if (squares[i] >= least && scale[i] > 0) {
        float score = rule.score(squares[i]);
        boolean doubtful = score > WORTH_A_SECOND_LOOK;
        if (score > scores[i]) {
          most =
              Math.max(
                  most, take(i, index, doubtful ? doubted(rule, i, moments, scores[i]) : score));
        }
      }
    }
    return most;
  }

  private static float largest(float[] squares, int from, int to) {
    float most = Float.NEGATIVE_INFINITY;
    for (int i = from; i < to; i++) {
      most = Math.max(most, squares[i]);
    }
    return most;
  }

  private static float doubted(ScoreRule rule, int pixel, ChannelMoments moments, float floor) {
    return (float) rule.doubted(pixel, moments, floor);
  }

  private float take(int pixel, int index, float score) {
    if (score > scores[pixel]) {
      widthIndex[pixel] = (byte) index;
      scores[pixel] = score;
    }
    return score;
  }
}
