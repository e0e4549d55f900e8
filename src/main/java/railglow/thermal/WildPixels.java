package railglow.thermal;

import java.util.Arrays;

/**
 * What a score is worth when a few pixels may have noise of their own, of any size above the
 * typical: a reflection, an edge that moves, a flickering pixel. The upper tail is the mixture of
 * that of the moderated t and, weighted by how likely the pixel is such a one given its scatter
 * between cycles, that of its own t. Immutable.
 */
final class WildPixels {
  private static final Remembered<Key, WildPixels> MADE = new Remembered<>(32, WildPixels::new);

  /** Scores up to this are not doubted: they are no mixtures. */
  static final double MOST_UNDOUBTED = 1;

  /** The upper tails of higher scores near the smallest double. */
  private static final double MOST_WITH_TAIL = 37;

  private static final int STEPS = 160;

  /** So small a share of a number makes no other number of it when added. */
  private static final double LOST = 0x1p-55;

  private static final double LOWEST_LOG = Math.log(1e-4);
  private static final double HIGHEST_LOG = Math.log(1e6);

  private final double[] logOdds = new double[STEPS + 1];
  private final double leastOdds;

  /**
   * The last few are remembered.
   *
   * @param degrees of freedom of a pixel's variance
   * @param prior degrees of freedom of the tame pixels' variances
   */
  static WildPixels of(double degrees, double prior) {
    return MADE.of(new Key(degrees, prior));
  }

  private record Key(double degrees, double prior) {}

  private WildPixels(Key key) {
    for (int k = 0; k <= STEPS; k++) {
      double variance = Math.exp(LOWEST_LOG + (HIGHEST_LOG - LOWEST_LOG) * k / STEPS);
      logOdds[k] = WildMap.logOdds(variance, key.degrees, key.prior);
    }
    leastOdds = Math.exp(Math.min(300, Arrays.stream(logOdds).min().orElseThrow()));
  }

  /**
   * How likely a pixel is wild.
   *
   * @param variance its own over the typical one
   * @param share of wild pixels around it
   */
  double chance(double variance, double share) {
    double at = (Math.log(Math.max(variance, 1e-300)) - LOWEST_LOG) / (HIGHEST_LOG - LOWEST_LOG);
    double step = Math.max(0, Math.min(STEPS - 1e-9, at * STEPS));
    int k = (int) step;
    double log = logOdds[k] + (step - k) * (logOdds[k + 1] - logOdds[k]);
    double odds = share * Math.exp(Math.min(300, log));
    return odds / (1 + odds);
  }

  /** No pixel is less likely to be wild among so many that are. */
  double leastChance(double share) {
    double odds = share * leastOdds;
    return odds / (1 + odds);
  }

  /**
   * Whether the score of any mixture with such an own score is surely not above the best. Where the
   * moderated score is the larger one, the mixture's tail is at least the own one's share; where it
   * is not, it is what counts, and below the own score, which is below the best.
   *
   * @param leastChance it is wild with this chance or a larger one
   * @param best above {@value #MOST_UNDOUBTED}, for lower scores are no mixtures
   */
  static boolean isSurelyLess(double ownScore, double leastChance, LargestScore best) {
    return ownScore < MOST_WITH_TAIL
        && best.surpasses(leastChance * NormalScore.upperTail(ownScore));
  }

  /** The score of the mixture; parameters as below. */
  static double score(double score, double ownScore, double chance) {
    LargestScore only = new LargestScore(Double.NEGATIVE_INFINITY);
    takeScore(score, ownScore, chance, only);
    return only.score();
  }

  /**
   * Takes the score of the mixture.
   *
   * @param score of the moderated t, above 0
   * @param ownScore of the pixel's own t
   * @param chance that it is wild
   */
  static void takeScore(double score, double ownScore, double chance, LargestScore best) {
    if (ownScore >= score) {
      best.take(score);
      return;
    }
    if (score > MOST_WITH_TAIL && ownScore > MOST_WITH_TAIL) {
      best.take(ownScore);
      return;
    }
    double ownTail = chance * NormalScore.upperTail(Math.min(MOST_WITH_TAIL, ownScore));
    if (best.surpasses(ownTail)) {
      return;
    }
    double tail = Math.min(1, withTailOf(Math.min(MOST_WITH_TAIL, score), ownTail));
    if (!best.surpasses(tail)) {
      best.take(NormalScore.ofUpperTail(tail), tail);
    }
  }

  /** A tail and that of a score, which is at most exp(-z^2/2)/2 and often lost in the last bit. */
  private static double withTailOf(double score, double tail) {
    boolean isLost = 0.5 * Math.exp(-0.5 * score * score) < LOST * tail;
    return isLost ? tail : NormalScore.upperTail(score) + tail;
  }
}
