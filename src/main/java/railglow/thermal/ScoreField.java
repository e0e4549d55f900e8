package railglow.thermal;

import java.util.Arrays;
import java.util.List;

/**
 * For every pixel the largest normal score over widths and directions, and the width at which it
 * was reached. Mutable, not thread-safe.
 */
final class ScoreField {
  /** Lower scores are no candidates for anything. */
  static final float WORTH_A_SECOND_LOOK = 3;

  /** Far more than a score loses as a float. */
  private static final double MARGIN = 1e-5;

  /** Between these nearly all pixels without a source have their square. */
  private static final float PLAIN_SQUARE = 12.25f;

  private static final float SMALL_SQUARE = 1e-3f;

  /** Far more than tables are off. */
  private static final float SURELY_LESS = 0.99f;

  private final int width;
  private final float[] scores;
  private final byte[] widthIndex;
  private final float[] leastThatWins;
  private final int[] canWin;

  ScoreField(int width, int height) {
    this.width = width;
    scores = new float[width * height];
    widthIndex = new byte[width * height];
    leastThatWins = new float[width];
    canWin = new int[width];
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
   * Takes in the tests of all widths along part of a row that was cleared. A doubt never raises a
   * score: where one is worth a second look the largest goes first, and only those that can still
   * win are doubted.
   *
   * @param widths of the same pixels
   * @return the largest score that is worth a second look, or what is lower
   */
  float include(List<RowTests> widths) {
    float most = WORTH_A_SECOND_LOOK;
    if (widths.isEmpty()) {
      return most;
    }
    int start = widths.get(0).start();
    int n = widths.get(0).pixels();
    setLeastThatWins(widths, n);
    for (RowTests tests : widths) {
      includePlain(tests);
    }
    for (int i = start; i < start + n; i++) {
      if (scores[i] > WORTH_A_SECOND_LOOK) {
        most = Math.max(most, doubted(widths, i));
      }
    }
    return most;
  }

  /**
   * A score is a little nearer to 0 than its t, more so for large ones and by each width's own
   * degrees of freedom: a t that is much smaller than the largest, below 0 as above it, need not be
   * turned into a score.
   */
  private void setLeastThatWins(List<RowTests> widths, int n) {
    Arrays.fill(leastThatWins, 0, n, Float.NEGATIVE_INFINITY);
    float least = PLAIN_SQUARE;
    for (RowTests tests : widths) {
      keepLargest(tests.squares(), leastThatWins, n);
      float score = tests.rule().score(PLAIN_SQUARE);
      least = Math.min(least, score * score);
    }
    float share = SURELY_LESS * least / PLAIN_SQUARE;
    float perShare = 1 / share;
    for (int x = 0; x < n; x++) {
      float most = leastThatWins[x];
      float size = Math.abs(most);
      boolean isPlain = size > SMALL_SQUARE && size < share * PLAIN_SQUARE;
      float surelyLess = most > 0 ? share * most : perShare * most;
      leastThatWins[x] = isPlain ? surelyLess : Float.NEGATIVE_INFINITY;
    }
  }

  private static void keepLargest(float[] values, float[] most, int n) {
    for (int x = 0; x < n; x++) {
      most[x] = Math.max(most[x], values[x]);
    }
  }

  private void includePlain(RowTests tests) {
    float[] squares = tests.squares();
    int n = tests.pixels();
    int some = 0;
    // no branch: which width wins is a toss-up that no processor can guess
    for (int x = 0; x < n; x++) {
      canWin[some] = x;
      some += squares[x] >= leastThatWins[x] ? 1 : 0;
    }
    ScoreRule rule = tests.rule();
    float[] scale = tests.scale();
    byte index = (byte) tests.widthIndex();
    for (int k = 0; k < some; k++) {
      int i = tests.start() + canWin[k];
      float score = scale[i] > 0 ? rule.score(squares[canWin[k]]) : Float.NEGATIVE_INFINITY;
      boolean wins = score > scores[i];
      widthIndex[i] = wins ? index : widthIndex[i];
      scores[i] = wins ? score : scores[i];
    }
  }

  private float doubted(List<RowTests> widths, int pixel) {
    float[] plain = new float[widths.size()];
    for (int w = 0; w < plain.length; w++) {
      plain[w] = widths.get(w).score(pixel);
    }
    scores[pixel] = Float.NEGATIVE_INFINITY;
    LargestScore best = new LargestScore(Double.NEGATIVE_INFINITY);
    for (int k = 0; k < plain.length; k++) {
      int w = largest(plain);
      float score = plain[w];
      if (!(score > scores[pixel])) {
        break;
      }
      plain[w] = Float.NEGATIVE_INFINITY;
      RowTests tests = widths.get(w);
      if (score > WORTH_A_SECOND_LOOK) {
        tests.takeDoubted(pixel - tests.start(), Double.POSITIVE_INFINITY, best);
      } else {
        best.take(score);
      }
      take(pixel, tests.widthIndex(), (float) best.score());
    }
    return scores[pixel];
  }

  private static int largest(float[] values) {
    int largest = 0;
    for (int k = 1; k < values.length; k++) {
      largest = values[k] > values[largest] ? k : largest;
    }
    return largest;
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
    if (!Extremes.reach(squares, least, tests.pixels())) {
      return any;
    }
    double enough = onlyWhether ? bound + MARGIN : Double.POSITIVE_INFINITY;
    for (int x = 0, i = tests.start(); x < tests.pixels(); x++, i++) {
      boolean isKnown = onlyWhether && scores[i] >= bound;
      if (squares[x] >= least && tests.scale()[i] > 0 && !isKnown) {
        float score = tests.rule().score(squares[x]);
        if (score > scores[i]) {
          LargestScore best = new LargestScore((float) Math.max(scores[i], bound - MARGIN));
          if (score > WORTH_A_SECOND_LOOK) {
            tests.takeDoubted(x, enough, best);
            score = (float) best.score();
          }
          if (score >= bound) {
            any = true;
            take(i, tests.widthIndex(), score);
          }
        }
      }
    }
    return any;
  }

  private void take(int pixel, int index, float score) {
    if (score > scores[pixel]) {
      widthIndex[pixel] = (byte) index;
      scores[pixel] = score;
    }
  }
}
