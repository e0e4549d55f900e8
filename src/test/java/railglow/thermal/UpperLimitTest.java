package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class UpperLimitTest {
  private static final int RUNS = 60;
  private static final double NOISE = 0.014;
  private static final int NOISY_ROW = 18;

  /**
   * @param swing of a source on the row; 0 for none
   * @param tau its time constant, seconds
   * @param rowNoise noise that the row has beside that of all pixels
   */
  private static Look look(long seed, double swing, double tau, double rowNoise) {
    WhiteCycles cycles = new WhiteCycles(48, 40, NOISE, seed);
    if (swing > 0) {
      double rise = swing / FirstOrderResponse.of(tau, 2).size();
      cycles.with(new WhiteCycles.Source(20 + seed % 7 / 7.0, NOISY_ROW, 1.5, rise, tau), 0, 2);
    }
    SplittableRandom random = new SplittableRandom(seed);
    Detector detector = new Detector(DetectionSettings.usual(2, 0, 0.05, 4, 8), 48, 40);
    for (int k = 0; k < 8; k++) {
      QuarterMeans means = cycles.next();
      for (Plane plane : List.of(means.q1(), means.q2(), means.q3(), means.q4())) {
        for (int x = 0; x < 48; x++) {
          plane.values()[NOISY_ROW * 48 + x] += (float) (rowNoise * random.nextGaussian());
        }
      }
      detector.addCycle(means);
    }
    return detector.look();
  }

  private static void isMissedInOneOfTwenty(double tau, double rowNoise) {
    int missed = 0;
    for (int run = 0; run < RUNS; run++) {
      double limit = look(400 + run, 0, 0, rowNoise).upperLimitKelvin();
      missed += look(800 + run, limit, tau, rowNoise).sources().isEmpty() ? 1 : 0;
    }
    int count = missed;
    assertTrue(count <= 8, () -> count + " of " + RUNS + " missed, tau " + tau);
  }

  @Test
  void aSlowSourceThatSwingsByTheLimitIsMissedAsSeldom() {
    isMissedInOneOfTwenty(0.5, 0);
    isMissedInOneOfTwenty(4, 0);
  }

  @Test
  void aSourceOnARowWithMoreNoiseIsMissedAsSeldom() {
    isMissedInOneOfTwenty(0, 2 * NOISE);
  }

  /** At a true 5 % more than 8 of 60 come in one test of 400. */
  @Test
  void aSourceOfTheLimitStatedForAnEmptyPictureIsMissedInAtMostOneRunOfTwenty() {
    for (double blur : new double[] {1.5, 2.5}) {
      int count = UpperLimitStudy.missed(RUNS, blur, 1);
      assertTrue(count <= 8, () -> count + " of " + RUNS + " missed, blur " + blur);
    }
  }
}
