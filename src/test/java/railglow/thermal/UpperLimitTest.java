package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class UpperLimitTest {
  private static final int RUNS = 60;

  private static Look look(long seed, double rise, double blur) {
    WhiteCycles cycles = new WhiteCycles(48, 40, 0.014, seed);
    if (rise > 0) {
      cycles.with(
          new WhiteCycles.Source(20 + seed % 7 / 7.0, 18 + seed % 5 / 5.0, blur, rise, 0), 0, 2);
    }
    Detector detector = new Detector(DetectionSettings.usual(2, 0, 0.05, 4, 8), 48, 40);
    for (int k = 0; k < 8; k++) {
      detector.addCycle(cycles.next());
    }
    return detector.look();
  }

  /** At a true 5 % more than 8 of 60 come in one test of 400. */
  @Test
  void aSourceOfTheLimitStatedForAnEmptyPictureIsMissedInAtMostOneRunOfTwenty() {
    for (double blur : new double[] {1.5, 2.5}) {
      int missed = 0;
      for (int run = 0; run < RUNS; run++) {
        double limit = look(400 + run, 0, blur).upperLimitKelvin();
        missed += look(800 + run, limit, blur).sources().isEmpty() ? 1 : 0;
      }
      int count = missed;
      assertTrue(count <= 8, () -> count + " of " + RUNS + " missed, blur " + blur);
    }
  }
}
