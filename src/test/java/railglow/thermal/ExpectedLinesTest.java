package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import org.junit.jupiter.api.Test;

class ExpectedLinesTest {
  private static final int WIDTH = 96;
  private static final int HEIGHT = 72;
  private static final double SIGMA = 2;
  private static final int PLACE = 30 * WIDTH + 40;

  /** Against the cleaning and the filter themselves, on made noise with and without a source. */
  @Test
  void whatIsLeftOfASourcesScoreWhereLinesMoveAsWholesIsAsExpected() {
    double quiet = score(0, 0);
    for (double[] lines : new double[][] {{0.5, 0.5}, {0, 0.4}, {1.5, 0}}) {
      PulseNoise noise = PulseNoise.white(1, 1).withLines(lines[0], lines[1]);
      assertEquals(
          score(lines[0], lines[1]) / quiet,
          ExpectedLines.scorePart(noise, SIGMA, WIDTH, HEIGHT),
          0.03,
          () -> lines[0] + " and " + lines[1]);
    }
    assertEquals(1, ExpectedLines.scorePart(PulseNoise.white(1, 1), SIGMA, WIDTH, HEIGHT), 1e-12);
  }

  /** What a source of half a pixel's noise gives behind cleaning and filter over the deviation. */
  private static double score(double rows, double columns) {
    Random random = new Random(8);
    MatchedFilter filter = new MatchedFilter(WIDTH, HEIGHT, SIGMA);
    double signal = 0;
    double squares = 0;
    long count = 0;
    for (int run = 0; run < 30; run++) {
      float[] noise = noise(random, rows, columns);
      float[] both = noise.clone();
      for (int i = 0; i < both.length; i++) {
        double r2 = Math.pow(i % WIDTH - 40, 2) + Math.pow(i / WIDTH - 30, 2);
        both[i] += (float) (0.5 * Math.exp(-r2 / (2 * SIGMA * SIGMA)));
      }
      float[] without = cleanedAndFiltered(noise, filter);
      signal += cleanedAndFiltered(both, filter)[PLACE] - without[PLACE];
      for (float value : without) {
        squares += value * value;
        count++;
      }
    }
    return signal / 30 / Math.sqrt(squares / count);
  }

  private static float[] noise(Random random, double rows, double columns) {
    float[] plane = new float[WIDTH * HEIGHT];
    double[] ofColumns = random.doubles(WIDTH).map(x -> columns * random.nextGaussian()).toArray();
    for (int row = 0, i = 0; row < HEIGHT; row++) {
      double ofRow = rows * random.nextGaussian();
      for (int x = 0; x < WIDTH; x++, i++) {
        plane[i] = (float) (random.nextGaussian() + ofRow + ofColumns[x]);
      }
    }
    return plane;
  }

  private static float[] cleanedAndFiltered(float[] plane, MatchedFilter filter) {
    float[] output = new float[plane.length];
    CommonParts.Removed removed = CommonParts.remove(plane, WIDTH, HEIGHT, null);
    filter.apply(plane, output, removed);
    return output;
  }
}
