package railglow.board.geometry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.apache.commons.math3.special.Erf;
import org.junit.jupiter.api.Test;

class OutlineTest {
  private static BoardPosition at(double x, double y, double xSigma, double ySigma) {
    return new BoardPosition(x, y, xSigma * xSigma, ySigma * ySigma, 0);
  }

  @Test
  void distanceIsZeroInsideAndEuclideanOutside() {
    Outline outline = new Outline(10, 20, 4, 2, 0);
    assertEquals(0, outline.distanceMillimetres(11.9, 20.9));
    assertEquals(1, outline.distanceMillimetres(13, 20), 1e-12);
    assertEquals(Math.hypot(1, 2), outline.distanceMillimetres(13, 23), 1e-12);
    assertTrue(outline.contains(12, 21));
    assertFalse(outline.contains(12.01, 20));
  }

  @Test
  void rotationIsCounterClockwise() {
    Outline outline = new Outline(0, 0, 10, 1, 45);
    assertTrue(outline.contains(3, 3));
    assertFalse(outline.contains(3, -3));
  }

  @Test
  void sigmasCountTheErrorAlongTheWay() {
    Outline outline = new Outline(0, 0, 2, 2, 0);
    assertEquals(4, outline.distanceSigmas(at(3, 0, 0.5, 7)), 1e-9);
    assertEquals(1, outline.distanceSigmas(at(0, 8, 0.5, 7)), 1e-9);
    assertEquals(0, outline.distanceSigmas(at(0.5, 0.5, 0.1, 0.1)));
    assertEquals(Double.POSITIVE_INFINITY, outline.distanceSigmas(at(3, 0, 0, 0)));
  }

  /** An axis-aligned normal over a rectangle is a product of error functions. */
  @Property(tries = 40, seed = "1")
  void theShareIsTheIntegralOfTheNormalDistribution(
      @ForAll @DoubleRange(min = -3, max = 3) double x,
      @ForAll @DoubleRange(min = -3, max = 3) double y,
      @ForAll @DoubleRange(min = 0.3, max = 3) double xSigma,
      @ForAll @DoubleRange(min = 0.3, max = 3) double ySigma) {
    double share = new Outline(0, 0, 4, 2, 0).shareOf(at(x, y, xSigma, ySigma));
    double exact = between(-2 - x, 2 - x, xSigma) * between(-1 - y, 1 - y, ySigma);
    // The grid's step is 0.1 sigma: an edge is known to half a step of it, 0.05 sigma x 0.4.
    assertEquals(exact, share, 0.045);
  }

  private static double between(double low, double high, double sigma) {
    return Erf.erf(low / sigma / Math.sqrt(2), high / sigma / Math.sqrt(2)) / 2;
  }

  @Property(tries = 40, seed = "2")
  void turningEverythingChangesNothing(
      @ForAll @DoubleRange(max = 360) double turn, @ForAll @DoubleRange(max = 6) double away) {
    double radians = Math.toRadians(turn);
    Outline turned = new Outline(0, 0, 4, 2, turn);
    BoardPosition position = at(away * Math.cos(radians), away * Math.sin(radians), 0.7, 0.7);
    assertEquals(
        Math.max(0, away - 2),
        turned.distanceMillimetres(position.xMillimetres(), position.yMillimetres()),
        1e-9);
    assertEquals(Math.max(0, away - 2) / 0.7, turned.distanceSigmas(position), 1e-9);
  }
}
