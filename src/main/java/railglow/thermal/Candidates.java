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

  /**
   * The strongest peak that is left, the first of equals; null when there is none. Stronger pixels
   * are flanks of what is claimed, and claimed with it: for a source wider than what was claimed
   * they are thousands, so all are found in one go. A flank that is below 0 ends the search.
   */
  Candidate strongest(ScoreField field) {
    float[] scores = field.scores();
    int best = -1;
    float most = Float.NEGATIVE_INFINITY;
    // what nearly no pixel is, higher, is asked first
    for (int i = 0; i < scores.length; i++) {
      if (scores[i] > most && !claimed[i] && field.isPeak(i)) {
        best = i;
        most = scores[i];
      }
    }
    boolean below = false;
    for (int i = 0; i < scores.length; i++) {
      if (scores[i] >= most && !claimed[i] && (scores[i] > most || i < best)) {
        claimed[i] = true;
        below |= scores[i] < 0;
      }
    }
    return best < 0 || below
        ? null
        : new Candidate(best % width, best / width, scores[best], field.widthIndexAt(best));
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
