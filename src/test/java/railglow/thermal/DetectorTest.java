package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

class DetectorTest {
  private static final DetectionSettings SETTINGS = DetectionSettings.usual(2, 0, 0.05, 4, 20);

  private static Look run(WhiteCycles cycles, int n) {
    Detector detector = new Detector(SETTINGS, 96, 72);
    for (int k = 0; k < n; k++) {
      detector.addCycle(cycles.next());
    }
    return detector.look();
  }

  @Test
  void aClearSourceIsFoundInPlaceWithItsRise() {
    WhiteCycles cycles =
        new WhiteCycles(96, 72, 0.014, 1)
            .with(new WhiteCycles.Source(40.3, 30.6, 2, 0.2, 0.3), 0, 2);
    Look look = run(cycles, 12);
    assertEquals(1, look.sources().size());
    HeatSource source = look.sources().get(0);
    assertEquals(40.3, source.column(), 0.1);
    assertEquals(30.6, source.row(), 0.1);
    assertEquals(2, source.widthPixels(), 0.15);
    assertTrue(source.riseInterval95().contains(0.2), () -> source.toString());
    assertEquals(1, source.cycleConsistency());
    assertEquals(source, look.strongest());
  }

  @Test
  void aSlowBodyIsFoundThoughItHardlyShowsInPhase() {
    WhiteCycles cycles =
        new WhiteCycles(96, 72, 0.014, 2)
            .with(new WhiteCycles.Source(40.3, 30.6, 2, 0.5, 2.0), 0, 2);
    Look look = run(cycles, 12);
    assertEquals(1, look.sources().size());
    HeatSource source = look.sources().get(0);
    assertTrue(source.quadratureKelvin() > 3 * Math.abs(source.inPhaseKelvin()));
    assertTrue(source.riseInterval95().contains(0.5), () -> source.toString());
  }

  @Test
  void whiteNoiseShowsNothingAndSaysWhatWouldHaveBeenSeen() {
    Look look = run(new WhiteCycles(96, 72, 0.014, 3), 12);
    assertEquals(0, look.sources().size());
    assertTrue(look.strongest().familyWiseP() > 0.05);
    assertTrue(look.upperLimitKelvin() > 0.002 && look.upperLimitKelvin() < 0.02);
  }

  /** Once something was called it is looked for first: sources that stay, and that go. */
  @Test
  void whatLooksBeforeFoundChangesNoScore() {
    int with = 8;
    int without = 60;
    Detector looking = new Detector(DetectionSettings.usual(2, 0, 0.05, 4, 100), 96, 72);
    Detector seldom = new Detector(DetectionSettings.usual(2, 0, 0.05, 4, 100), 96, 72);
    WhiteCycles warm =
        new WhiteCycles(96, 72, 0.014, 5)
            .with(new WhiteCycles.Source(40.3, 30.6, 2, 0.02, 0.3), 0, 2);
    WhiteCycles cold = new WhiteCycles(96, 72, 0.014, 6);
    for (int k = 0; k < with + without; k++) {
      QuarterMeans q = k < with ? warm.next() : cold.next();
      QuarterMeans cycle =
          new QuarterMeans(k, q.q1(), q.q2(), q.q3(), q.q4(), q.framesPerQuarter());
      looking.addCycle(cycle);
      seldom.addCycle(cycle);
      Look look = looking.look();
      if (k == with - 1 || k == with + without - 1) {
        assertEquals(k < with ? 1 : 0, look.sources().size(), () -> look.sources().toString());
        Look only = seldom.look();
        assertTrue(look.significance().sameBitsAs(only.significance()));
        assertTrue(look.significance().sameBitsAs(looking.look().significance()));
      }
    }
  }

  @Test
  void theSameCyclesGiveTheSameBits() {
    Look one = run(new WhiteCycles(96, 72, 0.014, 4), 9);
    Look two = run(new WhiteCycles(96, 72, 0.014, 4), 9);
    assertTrue(one.significance().sameBitsAs(two.significance()));
    assertTrue(one.inPhase().sameBitsAs(two.inPhase()));
    assertEquals(one.strongest(), two.strongest());
    assertEquals(one.upperLimitKelvin(), two.upperLimitKelvin());
  }

  @Test
  void lookingInBetweenChangesNothing() {
    Detector often = new Detector(SETTINGS, 96, 72);
    WhiteCycles cycles = new WhiteCycles(96, 72, 0.014, 4);
    Look last = null;
    for (int k = 0; k < 9; k++) {
      often.addCycle(cycles.next());
      last = often.look();
    }
    Look once = run(new WhiteCycles(96, 72, 0.014, 4), 9);
    assertTrue(once.significance().sameBitsAs(last.significance()));
    assertEquals(once.strongest(), last.strongest());
  }

  @Test
  void withoutEnoughCyclesNothingIsSaid() {
    for (int n = 0; n < 2; n++) {
      Look look = run(new WhiteCycles(96, 72, 0.014, 5), n);
      assertEquals(n, look.cycles());
      assertEquals(0, look.sources().size());
      assertNull(look.strongest());
      assertEquals(Double.POSITIVE_INFINITY, look.upperLimitKelvin());
    }
    Look beforeTheFirstLook =
        run(
            new WhiteCycles(96, 72, 0.014, 5).with(new WhiteCycles.Source(40, 30, 2, 5, 0), 0, 2),
            3);
    assertEquals(0, beforeTheFirstLook.sources().size());
    assertEquals(1, beforeTheFirstLook.strongest().familyWiseP());
  }

  @Test
  void planesWithoutASingleNumberAndConstantPlanesShowNothing() {
    for (float value : new float[] {Float.NaN, 7, Float.POSITIVE_INFINITY}) {
      Detector detector = new Detector(SETTINGS, 32, 24);
      for (int k = 0; k < 6; k++) {
        float[] values = new float[32 * 24];
        Arrays.fill(values, value);
        Plane plane = new Plane(32, 24, values);
        detector.addCycle(new QuarterMeans(k, plane, plane, plane, plane, new int[] {1, 1, 1, 1}));
      }
      Look look = detector.look();
      assertEquals(0, look.sources().size());
      assertNull(look.strongest());
      for (float score : look.significance().values()) {
        assertEquals(0, score);
      }
    }
  }

  @Test
  void aPixelThatIsDeadThroughoutHidesNothingBesideIt() {
    Detector detector = new Detector(SETTINGS, 96, 72);
    WhiteCycles cycles =
        new WhiteCycles(96, 72, 0.014, 6).with(new WhiteCycles.Source(40, 30, 2, 0.2, 0.1), 0, 2);
    for (int k = 0; k < 12; k++) {
      QuarterMeans q = cycles.next();
      for (Plane plane : new Plane[] {q.q1(), q.q2(), q.q3(), q.q4()}) {
        plane.set(41, 30, Float.NaN);
      }
      detector.addCycle(q);
    }
    HeatSource source = detector.look().sources().get(0);
    assertEquals(40, source.column(), 0.2);
    assertEquals(30, source.row(), 0.2);
    assertEquals(0.2, source.riseKelvin(), 0.03);
  }

  @Test
  void aSinglePixelThatFollowsThePulseIsNoSource() {
    Detector detector = new Detector(SETTINGS, 96, 72);
    WhiteCycles cycles = new WhiteCycles(96, 72, 0.014, 7);
    for (int k = 0; k < 12; k++) {
      QuarterMeans q = cycles.next();
      q.q2().set(50, 20, 3);
      q.q3().set(50, 20, 3);
      detector.addCycle(q);
    }
    assertEquals(0, detector.look().sources().size());
  }

  @Test
  void aStrongSourceThatIsNotEvenFromCycleToCycleIsCalledAtTheFirstLook() {
    Detector detector = new Detector(SETTINGS, 96, 72);
    double[] rises = {1.9, 2.1, 2.04, 1.96};
    for (int k = 0; k < rises.length; k++) {
      QuarterMeans q =
          new WhiteCycles(96, 72, 0.014, 60 + k)
              .with(new WhiteCycles.Source(40, 30, 2, rises[k], 0.1), 0, 2)
              .next();
      detector.addCycle(new QuarterMeans(k, q.q1(), q.q2(), q.q3(), q.q4(), q.framesPerQuarter()));
    }
    assertEquals(1, detector.look().sources().size());
  }

  @Test
  void aSourceAtTheBorderIsFound() {
    WhiteCycles cycles =
        new WhiteCycles(96, 72, 0.014, 8).with(new WhiteCycles.Source(0.2, 70.8, 2, 0.3, 0), 0, 2);
    HeatSource source = run(cycles, 12).sources().get(0);
    assertEquals(0.2, source.column(), 0.3);
    assertEquals(70.8, source.row(), 0.3);
  }

  @Test
  void cyclesOutOfOrderOrOfAnotherSizeOrBeyondTheCapAreRefused() {
    Detector detector = new Detector(SETTINGS, 96, 72);
    WhiteCycles cycles = new WhiteCycles(96, 72, 0.014, 9);
    QuarterMeans first = cycles.next();
    detector.addCycle(first);
    assertThrows(IllegalArgumentException.class, () -> detector.addCycle(first));
    WhiteCycles small = new WhiteCycles(32, 24, 0.014, 9);
    assertThrows(IllegalArgumentException.class, () -> detector.addCycle(small.next()));
    for (int k = 1; k < 20; k++) {
      detector.addCycle(cycles.next());
    }
    assertThrows(IllegalStateException.class, () -> detector.addCycle(cycles.next()));
  }
}
