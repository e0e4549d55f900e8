package railglow.thermal;

import java.util.ArrayList;
import java.util.List;

/** Peaks of the score field, strongest first, none in the skirt of a stronger one. Stateless. */
final class Candidates {
  private static final int MOST = 12;

  private Candidates() {}

  /** Every peak that would be called, and the strongest in any case. */
  static List<Candidate> in(
      ScoreField field, int width, int height, WidthStatistics[] statistics, double bound) {
    List<Candidate> found = new ArrayList<>();
    boolean[] taken = new boolean[width * height];
    float[] scores = field.scores();
    while (found.size() < MOST) {
      int best = -1;
      for (int i = 0; i < scores.length; i++) {
        if (!taken[i] && (best < 0 || scores[i] > scores[best])) {
          best = i;
        }
      }
      if (best < 0 || !(scores[best] > Float.NEGATIVE_INFINITY)) {
        break;
      }
      if (!found.isEmpty() && !(scores[best] >= bound)) {
        break;
      }
      int x = best % width;
      int row = best / width;
      int w = field.widthIndexAt(best);
      if (isPeak(scores, x, row, width, height)) {
        found.add(new Candidate(x, row, scores[best], w));
      }
      claim(taken, x, row, width, height, 3 * statistics[w].sigma());
    }
    return found;
  }

  private static boolean isPeak(float[] scores, int x, int row, int width, int height) {
    float here = scores[row * width + x];
    for (int r = Math.max(0, row - 1); r <= Math.min(height - 1, row + 1); r++) {
      for (int c = Math.max(0, x - 1); c <= Math.min(width - 1, x + 1); c++) {
        if (scores[r * width + c] > here) {
          return false;
        }
      }
    }
    return true;
  }

  private static void claim(boolean[] taken, int x, int row, int width, int height, double radius) {
    int reach = (int) Math.ceil(radius);
    for (int r = Math.max(0, row - reach); r <= Math.min(height - 1, row + reach); r++) {
      for (int c = Math.max(0, x - reach); c <= Math.min(width - 1, x + reach); c++) {
        if ((r - row) * (r - row) + (c - x) * (c - x) <= radius * radius) {
          taken[r * width + c] = true;
        }
      }
    }
  }
}
