package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** What is stated of a source against the truth, bounded; EstimateStudy makes the whole table. */
class EstimateTest {
  private static final int RUNS = 60;

  /** Of 240 at a true 95 % fewer than 219 or none but 237 come in one test of 200. */
  @Test
  void intervalsOfTheSwingAndEllipsesOfThePlaceCoverWhatTheySayAtAFixedEnd() {
    covers(
        EstimateStudy.Line.of(30_000, RUNS, 8, 0, false),
        EstimateStudy.Line.of(31_000, RUNS, 16, 0.25, false),
        EstimateStudy.Line.of(32_000, RUNS, 40, 0, false),
        EstimateStudy.Line.of(33_000, RUNS, 16, 1, false));
  }

  @Test
  void theyCoverItTooWhenTheRunIsStoppedByTheCall() {
    covers(
        EstimateStudy.Line.of(40_000, RUNS, 9, 0, true),
        EstimateStudy.Line.of(41_000, RUNS, 13, 0.25, true),
        EstimateStudy.Line.of(42_000, RUNS, 26, 0, true),
        EstimateStudy.Line.of(43_000, RUNS, 60, 1, true));
  }

  private static void covers(EstimateStudy.Line... lines) {
    int called = 0;
    int swings = 0;
    int places = 0;
    for (EstimateStudy.Line line : lines) {
      called += line.called();
      swings += line.swingCovered();
      places += line.inEllipse();
    }
    assertTrue(called >= 4 * RUNS - 6, "called in " + called);
    between("swings", swings, called);
    between("places", places, called);
  }

  private static void between(String what, int covered, int called) {
    double share = covered / (double) called;
    assertTrue(share >= 0.912 && share <= 0.99, what + ": " + covered + " of " + called);
  }
}
