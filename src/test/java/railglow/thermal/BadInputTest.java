package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Frames as they should not be: what is said then is defined, and never not a number. */
class BadInputTest {
  private static final int WIDTH = 96;
  private static final int HEIGHT = 72;
  private static final double NOISE = 0.014;

  private static WhiteCycles noise(long seed) {
    return new WhiteCycles(WIDTH, HEIGHT, NOISE, seed);
  }

  private static WhiteCycles source(long seed, double column, double row, double rise) {
    return noise(seed).with(new WhiteCycles.Source(column, row, 2, rise, 0.1), 0, 2);
  }

  private static Detector detector(int minCycles) {
    return new Detector(DetectionSettings.usual(2, 0, 0.05, minCycles, 20), WIDTH, HEIGHT);
  }

  private static Look run(WhiteCycles cycles, int n, UnaryOperator<Plane> spoiled) {
    Detector detector = detector(4);
    for (int k = 0; k < n; k++) {
      QuarterMeans q = cycles.next();
      detector.addCycle(
          new QuarterMeans(
              k,
              spoiled.apply(q.q1()),
              spoiled.apply(q.q2()),
              spoiled.apply(q.q3()),
              spoiled.apply(q.q4()),
              q.framesPerQuarter()));
    }
    Look look = detector.look();
    assertDefined(look);
    return look;
  }

  /** The left part of a picture replaced. */
  private static UnaryOperator<Plane> left(int columns, float value) {
    return plane -> {
      for (int y = 0; y < HEIGHT; y++) {
        for (int x = 0; x < columns; x++) {
          plane.set(x, y, value);
        }
      }
      return plane;
    };
  }

  private static UnaryOperator<Plane> cutAt(float most) {
    return plane -> {
      for (int i = 0; i < plane.values().length; i++) {
        plane.values()[i] = Math.min(most, plane.values()[i]);
      }
      return plane;
    };
  }

  private static void assertDefined(Look look) {
    assertFalse(Double.isNaN(look.upperLimitKelvin()));
    for (float score : look.significance().values()) {
      assertTrue(Float.isFinite(score));
    }
    for (HeatSource s : look.sources()) {
      for (double number :
          new double[] {
            s.column(),
            s.row(),
            s.columnVariance(),
            s.rowVariance(),
            s.covariance(),
            s.riseKelvin(),
            s.riseInterval95().low(),
            s.riseInterval95().high(),
            s.inPhaseKelvin(),
            s.quadratureKelvin(),
            s.timeConstantSeconds(),
            s.widthPixels(),
            s.familyWiseP(),
            s.cycleConsistency()
          }) {
        assertTrue(Double.isFinite(number), s::toString);
      }
    }
  }

  @Test
  void anAreaSaturatedThroughoutShowsNothingAndTheRestIsSearchedAsEver() {
    Look look = run(source(1, 70, 40, 0.2), 10, left(40, 400));
    assertEquals(1, look.sources().size());
    assertEquals(70, look.sources().get(0).column(), 0.3);
    for (int y = 0; y < HEIGHT; y++) {
      for (int x = 0; x < 34; x++) {
        assertTrue(look.significance().at(x, y) < 2, x + ", " + y);
      }
    }
  }

  @Test
  void whatAnAreaSaturatedThroughoutHidesIsNotCalled() {
    assertEquals(0, run(source(2, 15, 40, 5), 10, left(40, 400)).sources().size());
  }

  /** Its top is cut off: less is seen than there is, at the right place. */
  @Test
  void aSourceThatSaturatesWhileItIsOnIsCalledWhereItIs() {
    Look look = run(source(3, 40, 30, 5), 10, cutAt(1));
    assertFalse(look.sources().isEmpty());
    HeatSource source = look.sources().get(0);
    assertEquals(40, source.column(), 0.5);
    assertEquals(30, source.row(), 0.5);
    assertTrue(source.inPhaseKelvin() < 1.3, source::toString);
  }

  @Test
  void halfAPictureWithoutNumbersLeavesTheOtherHalf() {
    Look look = run(source(4, 70, 40, 0.2), 10, left(48, Float.NaN));
    assertEquals(1, look.sources().size());
    assertEquals(70, look.sources().get(0).column(), 0.3);
  }

  /** Half of its skirt is outside, or its middle, too. */
  @ParameterizedTest
  @CsvSource({"0, 0", "95, 71", "-1, 30", "96.5, 35", "50, -0.4", "47, 72"})
  void aSourceAtOrJustBeyondTheBorderIsDefined(double column, double row) {
    Look look = run(source(5, column, row, 0.5), 10, plane -> plane);
    for (HeatSource source : look.sources()) {
      assertTrue(Math.hypot(source.column() - column, source.row() - row) < 3, source::toString);
    }
    assertTrue(look.sources().size() <= 1, () -> look.sources().toString());
  }

  /** One cycle has no scatter, so nothing to judge by; two have one degree of freedom. */
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3})
  void aVeryStrongSourceInVeryFewCyclesIsDefined(int cycles) {
    Detector detector = detector(2);
    WhiteCycles frames = source(6, 40, 30, 50);
    for (int k = 0; k < cycles; k++) {
      detector.addCycle(frames.next());
    }
    Look look = detector.look();
    assertDefined(look);
    assertEquals(cycles, look.cycles());
    if (cycles == 1) {
      assertNull(look.strongest());
      assertEquals(Double.POSITIVE_INFINITY, look.upperLimitKelvin());
    }
  }

  /** No camera does this; without any scatter nothing can be said of certainty. */
  @Test
  void cyclesThatAreTheSameToTheLastBitShowNothing() {
    Detector detector = detector(4);
    QuarterMeans q = source(7, 40, 30, 1).next();
    for (int k = 0; k < 8; k++) {
      detector.addCycle(new QuarterMeans(k, q.q1(), q.q2(), q.q3(), q.q4(), q.framesPerQuarter()));
    }
    Look look = detector.look();
    assertDefined(look);
    assertEquals(0, look.sources().size());
  }

  @Test
  void numbersThatEndInMidRunMaskThePixelsFromThenOn() {
    int[] quarter = {0};
    Look look =
        run(
            source(8, 70, 40, 0.2),
            10,
            plane -> quarter[0]++ < 24 ? plane : left(40, Float.NaN).apply(plane));
    assertEquals(1, look.sources().size());
    assertEquals(70, look.sources().get(0).column(), 0.3);
  }

  @Test
  void aPictureOfTheSmallestSizeIsDefined() {
    Detector detector = new Detector(DetectionSettings.usual(2, 0, 0.05, 4, 20), 4, 4);
    WhiteCycles cycles = new WhiteCycles(4, 4, NOISE, 9);
    for (int k = 0; k < 8; k++) {
      detector.addCycle(cycles.next());
    }
    assertDefined(detector.look());
  }
}
