package railglow.board.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import railglow.board.geometry.Registration;
import railglow.board.geometry.RegistrationPoint;
import railglow.thermal.Plane;

/** Planes of known heat, the second seen by a camera at another place and at another power. */
class PlaneComparisonTest {
  private static final int WIDTH = 120;
  private static final int HEIGHT = 90;
  private static final double NOISE = 0.01;

  /** A camera whose picture lies aside by some pixels; its points carry their error. */
  private static Registration aside(double columns, double rows, Random random) {
    List<RegistrationPoint> points = new ArrayList<>();
    double[][] marks = {{4, 4}, {50, 4}, {50, 38}, {4, 38}, {27, 20}, {14, 30}, {40, 12}};
    for (double[] mark : marks) {
      points.add(
          new RegistrationPoint(
              "M",
              mark[0],
              mark[1],
              2 * mark[0] + 5 + columns + 0.1 * random.nextGaussian(),
              85 - 2 * mark[1] + rows + 0.1 * random.nextGaussian()));
    }
    return Registration.of(points, 0.1);
  }

  /** Heat of a good board at (20, 20) mm, 2 K/W, and more of it elsewhere. */
  private static Plane plane(
      double watts, double extraPerWatt, double columns, double rows, Random random) {
    Plane plane = new Plane(WIDTH, HEIGHT);
    for (int row = 0; row < HEIGHT; row++) {
      for (int column = 0; column < WIDTH; column++) {
        double heat =
            2 * spot(column - columns, row - rows, 45, 45)
                + extraPerWatt * spot(column - columns, row - rows, 85, 25);
        plane.set(column, row, (float) (watts * heat + NOISE * random.nextGaussian()));
      }
    }
    return plane;
  }

  private static double spot(double column, double row, double atColumn, double atRow) {
    double square = (column - atColumn) * (column - atColumn) + (row - atRow) * (row - atRow);
    return StrictMath.exp(-square / (2 * 3 * 3));
  }

  private static PlaneComparison compared(double extraPerWatt, long seed) {
    Random random = new Random(seed);
    return PlaneComparison.of(
        new PlaneComparison.Side(
            plane(1.0, 0, 0, 0, random), 1.0, Optional.of(aside(0, 0, random))),
        new PlaneComparison.Side(
            plane(0.5, extraPerWatt, 6.4, -3.7, random),
            0.5,
            Optional.of(aside(6.4, -3.7, random))));
  }

  @Test
  void boardsThatAreAlikeDifferNowhereThoughCameraAndPowerDo() {
    int called = 0;
    for (int seed = 0; seed < 30; seed++) {
      called += compared(0, seed).places().isEmpty() ? 0 : 1;
    }
    // The error is 1 % a comparison: of 30, three or more come three times in a thousand.
    assertTrue(called < 3, called + " of 30");
  }

  @Test
  void aPlaceThatIsWarmerPerWattIsFoundWithItsSizeAndPlace() {
    PlaneComparison.Place place = compared(0.1, 5).places().get(0);
    // 85 px, 25 px is 40 mm, 30 mm; smoothing by 2 px lowers a spot of 3 px to 9/13.
    assertEquals(40, place.board().orElseThrow().xMillimetres(), 1);
    assertEquals(30, place.board().orElseThrow().yMillimetres(), 1);
    assertEquals(0.1 * 9 / 13, place.difference(), 4 * place.sigma());
    assertTrue(place.p() < 1e-3, "p = " + place.p());
  }

  @Test
  void whatWouldHaveBeenSeenIsSeen() {
    double smallest = compared(0, 1).smallestKelvinPerWatt();
    int found = 0;
    for (int seed = 100; seed < 130; seed++) {
      found += compared(smallest * 13 / 9, seed).places().isEmpty() ? 0 : 1;
    }
    assertTrue(found >= 26, found + " of 30 at " + smallest + " K/W");
  }

  @Test
  void withoutRegistrationPixelsAreComparedAsTheyLie() {
    Random random = new Random(3);
    PlaneComparison comparison =
        PlaneComparison.of(
            new PlaneComparison.Side(plane(1, 0, 0, 0, random), 1, Optional.empty()),
            new PlaneComparison.Side(plane(1, 0.3, 0, 0, random), 1, Optional.empty()));
    assertEquals(85, comparison.places().get(0).column(), 2);
    assertTrue(comparison.places().get(0).board().isEmpty());
  }

  /** Round a warm place the board lags so much that it seems to cool in step with the pulse. */
  private static void addRing(Plane plane, double kelvin) {
    for (int row = 0; row < HEIGHT; row++) {
      for (int column = 0; column < WIDTH; column++) {
        double distance = Math.hypot(column - 85, row - 25) - 13;
        double ring = kelvin * StrictMath.exp(-distance * distance / (2 * 3 * 3));
        plane.set(column, row, plane.at(column, row) - (float) ring);
      }
    }
  }

  private static PlaneComparison ringed(double ringKelvin) {
    Random random = new Random(8);
    Plane warm = plane(1, 2, 0, 0, random);
    addRing(warm, ringKelvin);
    return PlaneComparison.of(
        new PlaneComparison.Side(plane(1, 0, 0, 0, random), 1, Optional.empty()),
        new PlaneComparison.Side(warm, 1, Optional.empty()));
  }

  @Test
  void theRingThatLagsAroundAWarmPlaceIsNoPlaceOfItsOwn() {
    PlaneComparison comparison = ringed(0.3);
    assertEquals(1, comparison.places().size(), comparison.places().toString());
    assertEquals(85, comparison.places().get(0).column(), 2);
  }

  @Test
  void aPlaceThatCoolsTooMuchForARingIsCalledBesideTheWarmOne() {
    PlaneComparison comparison = ringed(1.2);
    assertTrue(comparison.places().size() > 1, comparison.places().toString());
    assertTrue(
        comparison.places().stream().anyMatch(place -> place.difference() < 0),
        comparison.places().toString());
  }

  @Test
  void picturesAreAsWarmWhereBothShowTheSameHeatPerWattAndOnlyThere() {
    Random random = new Random(9);
    PlaneComparison.Side first =
        new PlaneComparison.Side(plane(1, 0, 0, 0, random), 1, Optional.empty());
    PlaneComparison.Side second =
        new PlaneComparison.Side(plane(0.5, 1, 0, 0, random), 0.5, Optional.empty());
    assertTrue(PlaneComparison.asWarm(first, second, 45, 45), "2 K/W in both");
    assertTrue(!PlaneComparison.asWarm(first, second, 85, 25), "1 K/W in the second alone");
    assertTrue(!PlaneComparison.asWarm(first, second, 20, 70), "noise in both");
    assertTrue(!PlaneComparison.asWarm(first, second, -5, 25), "outside the picture");
  }
}
