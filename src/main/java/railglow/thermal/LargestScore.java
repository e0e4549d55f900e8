package railglow.thermal;

/**
 * The largest of many scores, most of which need not be worked out: a score is dear to make from
 * its tail, and tails are as easily compared. Mutable, not thread-safe.
 */
final class LargestScore {
  /** Far more than tails are off. */
  private static final double SURELY = 1 + 1e-9;

  private double score;
  private double tail = Double.NaN;

  /** Of those above a floor; the floor itself where none is. */
  LargestScore(double floor) {
    score = floor;
  }

  void take(double another) {
    if (another > score) {
      score = another;
      tail = Double.NaN;
    }
  }

  /**
   * The same where its tail is known.
   *
   * @param itsTail the upper tail that the score was made from
   */
  void take(double another, double itsTail) {
    if (another > score) {
      score = another;
      tail = SURELY * itsTail;
    }
  }

  double score() {
    return score;
  }

  /** Whether a score of such an upper tail, or of a larger one, is surely not larger. */
  boolean surpasses(double anotherTail) {
    if (Double.isNaN(tail)) {
      tail = SURELY * NormalScore.upperTail(score);
    }
    return anotherTail > tail;
  }
}
