package railglow.thermal;

/**
 * The doubts about one pixel, along one direction after the other. Most directions can be seen not
 * to win before it is known how likely the pixel is wild. Not thread-safe.
 */
final class PixelDoubt {
  private final Doubt doubt;
  private final double share;
  private final double leastChance;
  private final double whole;
  private double surelyLess = Double.NEGATIVE_INFINITY;

  /**
   * @param doubt of scores by as many cycles
   * @param pixel flat index in the picture
   * @param whole the pixel's variance over the typical one, both channels together
   */
  PixelDoubt(Doubt doubt, int pixel, double whole) {
    this.doubt = doubt;
    this.whole = whole;
    share = doubt.shareAt(pixel);
    leastChance = doubt.wildAlong().leastChance(share);
  }

  /**
   * Whether a direction surely has no score above the best, even if its pixel is as tame as can be.
   * For the best only grows, nor has one along which the pixel's own t is smaller.
   *
   * @param mean along the direction
   * @param squares sum of squared deviations from it, typical variance 1
   */
  boolean cannotWin(double mean, double squares, LargestScore best) {
    if (!(best.score() > WildPixels.MOST_UNDOUBTED)) {
      return false;
    }
    double own = doubt.ownT(mean, squares);
    boolean isLess =
        own <= surelyLess
            || WildPixels.isSurelyLess(doubt.ownTable().score(own), leastChance, best);
    surelyLess = isLess ? Math.max(own, surelyLess) : surelyLess;
    return isLess;
  }

  /** See {@link Doubt#weigh}. */
  void weigh(double score, double mean, double squares, LargestScore best) {
    doubt.weigh(score, mean, squares, whole, share, best);
  }
}
