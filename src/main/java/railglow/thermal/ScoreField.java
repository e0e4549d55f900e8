package railglow.thermal;

import java.util.Arrays;

/**
 * For every pixel the largest normal score over widths and directions, and the width at which it
 * was reached. Mutable, not thread-safe.
 */
final class ScoreField {
  /** Lower scores are no candidates for anything. */
  static final float WORTH_A_SECOND_LOOK = 3;

  /** Far more than a score loses as a float. */
  private static final double MARGIN = 1e-5;

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
   * Takes in the tests of one width along part of a row.
   *
   * @return the largest score that is worth a second look, or what is lower
   */
  float include(RowTests tests) {
    int start = tests.start();
    int n = tests.pixels();
    float[] squares = tests.squares();
    ScoreRule rule = tests.rule();
    for (int x = 0; x < n; x++) {
      newScores[x] = rule.score(squares[x]);
    }
    float[] scale = tests.scale();
    int index = tests.widthIndex();
    int doubtful = 0;
    for (int x = 0, i = start; x < n; x++, i++) {
      float score = scale[i] > 0 ? newScores[x] : Float.NEGATIVE_INFINITY;
      boolean wins = score > scores[i];
      if (wins && score > WORTH_A_SECOND_LOOK) {
        worthALook[doubtful++] = x;
        continue;
      }
      // no branch: which width wins is a toss-up that no processor can guess
      widthIndex[i] = wins ? (byte) index : widthIndex[i];
      scores[i] = wins ? score : scores[i];
    }
    float most = WORTH_A_SECOND_LOOK;
    for (int k = 0; k < doubtful; k++) {
      int x = worthALook[k];
      float score = tests.doubted(x, scores[start + x], Double.POSITIVE_INFINITY);
      most = Math.max(most, score);
      take(start + x, index, score);
    }
    return most;
  }

  /**
   * Takes in those that are as high as a bound; the others are left as they are.
   *
   * @param least no smaller square is as high
   * @param onlyWhether how much higher they are need not be known
   * @return whether any is
   */
  boolean includeAbove(RowTests tests, double bound, float least, boolean onlyWhether) {
    float[] squares = tests.squares();
    boolean any = false;
    if (!(largest(squares, tests.pixels()) >= least)) {
      return any;
    }
    double enough = onlyWhether ? bound + MARGIN : Double.POSITIVE_INFINITY;
    for (int x = 0, i = tests.start(); x < tests.pixels(); x++, i++) {
      boolean isKnown = onlyWhether && scores[i] >= bound;
      if (squares[x] >= least && tests.scale()[i] > 0 && !isKnown) {
        float score = tests.rule().score(squares[x]);
        if (score > scores[i]) {
          float floor = (float) Math.max(scores[i], bound - MARGIN);
          score = score > WORTH_A_SECOND_LOOK ? tests.doubted(x, floor, enough) : score;
          if (score >= bound) {
            any = true;
            take(i, tests.widthIndex(), score);
          }
        }
      }
    }
    return any;
  }

  private static float largest(float[] squares, int n) {
    float most = Float.NEGATIVE_INFINITY;
    for (int x = 0; x < n; x++) {
      most = Math.max(most, squares[x]);
    }
    return most;
  }

  private void take(int pixel, int index, float score) {
    if (score > scores[pixel]) {
      widthIndex[pixel] = (byte) index;
      scores[pixel] = score;
    }
  }
}
