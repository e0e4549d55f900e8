package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class ClimbTest {
  /** Cycles that scatter by a tenth: the surest pixel is where they happen to agree. */
  @Test
  void aSourceThatIsSurestOnItsFlankIsPlacedAtItsTop() {
    Detector detector = new Detector(DetectionSettings.usual(2, 0, 0.05, 4, 20), 96, 72);
    double[] columns = {39.5, 40.5, 40.4, 39.6};
    for (int k = 0; k < columns.length; k++) {
      QuarterMeans q =
          new WhiteCycles(96, 72, 0.014, 60 + k)
              .with(new WhiteCycles.Source(columns[k], 30, 2.5, 3, 0.1), 0, 2)
              .next();
      detector.addCycle(new QuarterMeans(k, q.q1(), q.q2(), q.q3(), q.q4(), q.framesPerQuarter()));
    }
    Look look = detector.look();
    float[] scores = look.significance().values();
    int surest = 0;
    for (int i = 0; i < scores.length; i++) {
      surest = scores[i] > scores[surest] ? i : surest;
    }
    double far = Math.hypot(surest % 96 - 40, surest / 96 - 30);
    assertTrue(far > 1, "the surest pixel is on the top itself: " + far);
    assertEquals(1, look.sources().size(), () -> look.sources().toString());
    assertEquals(40, look.sources().get(0).column(), 0.3);
    assertEquals(30, look.sources().get(0).row(), 0.3);
    assertEquals(2.5, look.sources().get(0).widthPixels(), 0.3);
  }
}
