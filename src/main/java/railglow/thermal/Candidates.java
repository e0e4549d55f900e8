package railglow.thermal;

/** Peaks of the score field, strongest first, outside of what was claimed. Not thread-safe. */
final class Candidates {
  private final int width;
  private final int height;
  private final boolean[] claimed;

  Candidates(int width, int height) {
    this.width = width;
    this.height = height;
    claimed = new boolean[width * height];
  }

  /** The strongest peak that is left; null when there is none. */
  Candidate strongest(ScoreField field) {
    float[] scores = field.scores();
    while (true) {
      int best = -1;
      for (int i = 0; i < scores.length; i++) {
        if (!claimed[i] && (best < 0 || scores[i] > scores[best])) {
          best = i;
        }
      }
      if (best < 0 || !(scores[best] > Float.NEGATIVE_INFINITY)) {
        return null;
      }
      int x = best % width;
      int row = best / width;
      if (isPeak(scores, x, row)) {
        return new Candidate(x, row, scores[best], field.widthIndexAt(best));
      }
      // the flank of something claimed
      claimed[best] = true;
      if (scores[best] < 0) {
        return null;
      }
    }
  }

  private boolean isPeak(float[] scores, int x, int row) {
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

  /** Nothing more is looked for within a radius of a place. */
  void claim(double column, double row, double radius) {
    int reach = (int) Math.ceil(radius);
    int x0 = (int) Math.round(column);
    int y0 = (int) Math.round(row);
    for (int r = Math.max(0, y0 - reach); r <= Math.min(height - 1, y0 + reach); r++) {
      for (int c = Math.max(0, x0 - reach); c <= Math.min(width - 1, x0 + reach); c++) {
        if ((r - row) * (r - row) + (c - column) * (c - column) <= radius * radius) {
          claimed[r * width + c] = true;
        }
      }
    }
  }
}
