package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class WildPixelsTest {
  private static final double SHARE = 3e-4;

  private final WildPixels wild = WildPixels.of(11, Double.POSITIVE_INFINITY);

  /** By the mixture's own formula: the sum of both tails. */
  private static double mixture(double score, double own, double chance) {
    return NormalScore.ofUpperTail(
        Math.min(1, NormalScore.upperTail(score) + chance * NormalScore.upperTail(own)));
  }

  @Test
  void theScoreOfAMixtureIsThatOfBothTails() {
    for (double score = 1; score < 36; score += 0.7) {
      for (double own = 0.5; own < score; own += 0.9) {
        for (double chance : new double[] {1e-6, 0.01, 1}) {
          assertEquals(mixture(score, own, chance), WildPixels.score(score, own, chance), 0);
        }
      }
    }
  }

  @Test
  void noPixelIsLessLikelyToBeWildThanTheLeastChance() {
    double least = wild.leastChance(SHARE);
    double closest = 1;
    for (double log = -12; log < 15; log += 0.01) {
      double chance = wild.chance(Math.exp(log), SHARE);
      assertTrue(chance >= least * (1 - 1e-12), "at " + Math.exp(log));
      closest = Math.min(closest, chance / least);
    }
    assertTrue(closest < 1.01, "somewhere it is reached: " + closest);
  }

  @Test
  void whatIsSurelyLessIsNotAboveTheBest() {
    SplittableRandom random = new SplittableRandom(4);
    int sure = 0;
    for (int k = 0; k < 20_000; k++) {
      double score = 1 + 40 * random.nextDouble();
      double own = 1 + 40 * random.nextDouble();
      double chance = wild.chance(3 * random.nextDouble(), SHARE);
      double before = 1 + 40 * random.nextDouble();
      LargestScore best = new LargestScore(before);
      if (WildPixels.isSurelyLess(own, wild.leastChance(SHARE), best)) {
        sure++;
        assertTrue(WildPixels.score(score, own, chance) <= before, score + ", " + own);
      }
    }
    assertTrue(sure > 2000, "often it is sure: " + sure);
    assertFalse(
        WildPixels.isSurelyLess(38, wild.leastChance(SHARE), new LargestScore(37)),
        "beyond what tails can tell");
  }

  @Test
  void aTailThatIsKnownIsAsGoodAsOneMadeFromTheScore() {
    double tail = 1e-9;
    LargestScore known = new LargestScore(0);
    LargestScore made = new LargestScore(0);
    known.take(NormalScore.ofUpperTail(tail), tail);
    made.take(NormalScore.ofUpperTail(tail));
    assertEquals(made.score(), known.score(), 0);
    for (double times : new double[] {0.5, 1 - 1e-6, 1 + 1e-6, 2}) {
      assertEquals(times > 1, known.surpasses(times * tail));
      assertEquals(times > 1, made.surpasses(times * tail));
    }
  }
}
