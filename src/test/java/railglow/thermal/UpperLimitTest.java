package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class UpperLimitTest {
  private static final int RUNS = 60;

  /** At a true 5 % more than 8 of 60 come in one test of 400. */
  @Test
  void aSourceOfTheLimitStatedForAnEmptyPictureIsMissedInAtMostOneRunOfTwenty() {
    for (double blur : new double[] {1.5, 2.5}) {
      int count = UpperLimitStudy.missed(RUNS, blur, 1);
      assertTrue(count <= 8, () -> count + " of " + RUNS + " missed, blur " + blur);
    }
  }
}
