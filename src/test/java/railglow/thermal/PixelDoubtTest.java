package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class PixelDoubtTest {
  private static final int CYCLES = 12;
  private static final double WHOLE = 1.3;

  private final Doubt doubt =
      Doubt.of(CYCLES, SmallPicture.pooled(SmallPicture.moments(CYCLES, 50, 60)), null);

  @Test
  void whatCannotWinIsNotAboveTheBestWhateverTheOtherScoreIs() {
    SplittableRandom random = new SplittableRandom(8);
    int cannot = 0;
    for (int k = 0; k < 20_000; k++) {
      PixelDoubt pixel = new PixelDoubt(doubt, 0, WHOLE);
      LargestScore best = new LargestScore(12 * random.nextDouble());
      double before = best.score();
      // the second direction may be told by the first
      for (int direction = 0; direction < 2; direction++) {
        double mean = 6 * random.nextDouble() - 1;
        double squares = (CYCLES - 1) * 3 * random.nextDouble();
        if (pixel.cannotWin(mean, squares, best)) {
          cannot++;
          double score = 1 + 40 * random.nextDouble();
          doubt.weigh(score, mean, squares, WHOLE, doubt.shareAt(0), best);
          assertTrue(best.score() <= before, mean + ", " + squares + ", " + score);
        }
      }
    }
    assertTrue(cannot > 2000, "often it is seen: " + cannot);
  }

  @Test
  void nothingIsComparedWithABestThatIsNoMixture() {
    PixelDoubt pixel = new PixelDoubt(doubt, 0, WHOLE);
    assertFalse(pixel.cannotWin(-5, CYCLES, new LargestScore(WildPixels.MOST_UNDOUBTED)));
  }
}
