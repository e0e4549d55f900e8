package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class TrustMapTest {
  @Test
  void aSpotThatDoesNotFollowThePulseIsNotTrustedAndAHeatSourceIs() {
    Detector detector = new Detector(DetectionSettings.usual(2, 0, 0.05, 4, 12), 96, 72);
    WhiteCycles cycles =
        new WhiteCycles(96, 72, 0.014, 4).with(new WhiteCycles.Source(30, 30, 2, 0.2, 0), 0, 2);
    for (int k = 0; k < 12; k++) {
      QuarterMeans q = cycles.next();
      Plane disturbed = k % 3 == 0 ? q.q1() : k % 3 == 1 ? q.q2() : q.q4();
      for (int y = 48; y < 56; y++) {
        for (int x = 66; x < 74; x++) {
          disturbed.set(x, y, disturbed.at(x, y) + 0.3f);
        }
      }
      detector.addCycle(q);
    }
    Plane trust = detector.trust();
    assertTrue(trust.at(70, 52) < 0.3);
    assertEquals(1, trust.at(30, 30), 0.3);
    assertEquals(1, trust.at(10, 10));
    assertEquals(1, detector.look().sources().size());
  }

  @Test
  void pixelsThatNeverChangeAreNotTrustedAndAStrongUnevenSourceIs() {
    Detector detector = new Detector(DetectionSettings.usual(2, 0, 0.05, 4, 12), 64, 48);
    for (int k = 0; k < 8; k++) {
      QuarterMeans q =
          new WhiteCycles(64, 48, 0.014, 70 + k)
              .with(new WhiteCycles.Source(30, 20, 2, 2 + 0.1 * (k % 2), 0.1), 0, 2)
              .next();
      for (Plane plane : new Plane[] {q.q1(), q.q2(), q.q3(), q.q4()}) {
        plane.set(50, 30, 7);
        plane.set(51, 30, Float.NaN);
      }
      detector.addCycle(new QuarterMeans(k, q.q1(), q.q2(), q.q3(), q.q4(), q.framesPerQuarter()));
    }
    Plane trust = detector.trust();
    assertEquals(0, trust.at(50, 30));
    assertEquals(0, trust.at(51, 30));
    assertEquals(1, trust.at(30, 20));
  }

  @Test
  void withoutCyclesEverythingIsTrusted() {
    Detector detector = new Detector(DetectionSettings.usual(2, 0, 0.05, 4, 12), 16, 12);
    assertEquals(1, detector.trust().at(3, 3));
  }
}
