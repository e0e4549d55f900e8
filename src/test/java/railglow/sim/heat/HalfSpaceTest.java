package railglow.sim.heat;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The plate's solver in one dimension, a single row of cells without loss, against textbook
 * solutions in time of the half space and of the point source.
 */
class HalfSpaceTest {
  /** Glass-epoxy: 0.3 W/mK, 1900 kg/m3, 1200 J/kgK; D = 1.3158e-7 m2/s. */
  private static final PlateMaterial LAMINATE = new PlateMaterial(1, 0.3, 1900.0 * 1200);

  private static ThinPlate row(int cells, double cellMetres, PlateMaterial material) {
    ThinPlate plate = new ThinPlate(cells, 1, cellMetres, material, SurfaceLoss.constant(0));
    plate.refreshLosses();
    return plate;
  }

  /**
   * -1 in one half and 1 in the other: the middle stays at 0 by symmetry, so the other half is a
   * half space of 1 whose surface is held at 0.
   */
  private static ThinPlate heldAtZero(
      int half, double cellMetres, double squareMetresPerSecond, double seconds) {
    ThinPlate plate = row(2 * half, cellMetres, new PlateMaterial(1, squareMetresPerSecond, 1));
    for (int i = 0; i < 2 * half; i++) {
      plate.addJoules(i, (i < half ? -1 : 1) * plate.cellCapacity());
    }
    int steps = plate.divisions(seconds);
    for (int k = 0; k < steps; k++) {
      plate.conduct(seconds / steps);
    }
    return plate;
  }

  private static double at(ThinPlate plate, double depthMetres) {
    double place = depthMetres / plate.cellMetres() + plate.columns() / 2.0 - 0.5;
    int i = (int) place;
    return plate.rise()[i] + (place - i) * (plate.rise()[i + 1] - plate.rise()[i]);
  }

  /**
   * How deep a water main must lie: ground of an even temperature whose surface turns cold at once;
   * where is 0 degC after so many days? The first is worked out in Incropera and DeWitt, chapter 5
   * (0.68 m; exactly 0.677), the others are set in Cengel, chapter 4; exact depths by the inverse
   * error function, x = 2 erfinv((0 - Ts)/(Ti - Ts)) sqrt(D t): scipy.special.erfinv 1.17.
   */
  @ParameterizedTest
  @CsvSource({
    "20, -15, 0.138e-6, 60, 0.67696",
    "15, -10, 0.15e-6, 90, 0.8009",
    "8, -8, 0.15e-6, 60, 0.84114"
  })
  void frostReachesTheDepthOfTheErrorFunction(
      double ground, double surface, double diffusivity, double days, double depth) {
    ThinPlate plate = heldAtZero(500, 0.01, diffusivity, days * 86_400);
    double share = (0 - surface) / (ground - surface);
    // the profile's slope at the frost line turns an error of the profile into one of depth
    double slope = (at(plate, depth + 0.005) - at(plate, depth - 0.005)) / 0.01;
    assertEquals(depth, depth + (share - at(plate, depth)) / slope, 5e-4);
  }

  /**
   * 0.1 W from a point in laminate, q/(4 pi k r) erfc(r/sqrt(4 D t)), and at the surface of a half
   * space twice that (Carslaw and Jaeger, Conduction of Heat in Solids, 2nd ed., section 10.4):
   * there r T obeys the equation of one dimension, and at r = 0 it is held at q/(4 pi k). Numbers
   * by scipy.special.erfc 1.17.
   */
  @ParameterizedTest
  @CsvSource({"1, 10, 1, 14.26037", "1, 10, 2, 28.52074", "1, 1, 2, 2.71903", "5, 100, 2, 3.49843"})
  void aSteadyPointSourceWarmsLikeTheComplementaryErrorFunction(
      double millimetres, double seconds, int times, double kelvin) {
    double cell = 0.02e-3 * Math.sqrt(seconds);
    ThinPlate plate = heldAtZero(300, cell, LAMINATE.diffusivity(), seconds);
    double r = millimetres * 1e-3;
    double settled = times * 0.1 / (4 * Math.PI * 0.3 * r);
    assertEquals(kelvin, settled * (1 - at(plate, r)), 1e-3 * kelvin);
  }

  /** 2 q/k sqrt(D t/pi) at the surface, Carslaw and Jaeger, section 2.9; 1000 W/m2 for 1 s. */
  @Test
  void aSteadyFluxWarmsTheSurfaceWithTheRootOfTime() {
    ThinPlate plate = row(500, 0.01e-3, LAMINATE);
    int steps = plate.divisions(1);
    for (int k = 0; k < steps; k++) {
      plate.addJoules(0, 1000 * plate.cellMetres() / steps / 2);
      plate.conduct(1.0 / steps);
      plate.addJoules(0, 1000 * plate.cellMetres() / steps / 2);
    }
    assertEquals(1.36435, surface(plate, 1000), 2e-3);
  }

  /**
   * q/k sqrt(D/omega), 45 degrees late, Carslaw and Jaeger, sections 2.6 to 2.9; 1000 W/m2 on
   * laminate.
   */
  @ParameterizedTest
  @CsvSource({"1, 0.48237", "0.1, 1.52539"})
  void aSineOfFluxWarmsTheSurfaceAnEighthOfAPeriodLate(double hertz, double kelvin) {
    ThinPlate plate = row(300, 0.02e-3 / Math.sqrt(hertz), LAMINATE);
    int perPeriod = plate.divisions(1 / hertz);
    double dt = 1 / hertz / perPeriod;
    double sine = 0;
    double cosine = 0;
    for (int k = 0; k < 8 * perPeriod; k++) {
      double phase = 2 * Math.PI * (k + 0.5) / perPeriod;
      double flux = 1000 * Math.sin(phase);
      plate.addJoules(0, flux * plate.cellMetres() * dt / 2);
      plate.conduct(dt);
      plate.addJoules(0, flux * plate.cellMetres() * dt / 2);
      if (k >= 6 * perPeriod) {
        sine += surface(plate, flux) * Math.sin(phase) / perPeriod;
        cosine += surface(plate, flux) * Math.cos(phase) / perPeriod;
      }
    }
    assertEquals(kelvin, Math.hypot(sine, cosine), 5e-3 * kelvin);
    assertEquals(-45, Math.toDegrees(Math.atan2(cosine, sine)), 0.5);
  }

  /** Half a cell beyond the first cell's middle, along the slope that the flux gives. */
  private static double surface(ThinPlate plate, double flux) {
    return plate.rise()[0] + flux / LAMINATE.conductivity() * plate.cellMetres() / 2;
  }

  /**
   * Heat put at once into a point of a plate, Q/(4 pi D t) exp(-r^2/(4 D t)) per heat capacity of
   * an area (Carslaw and Jaeger, section 10.3); in the corner of a quarter plate four times that.
   */
  @Test
  void aMomentaryPointSourceSpreadsAsAGaussian() {
    PlateMaterial board = PlateMaterial.board(1.6e-3, 70e-6);
    ThinPlate plate = new ThinPlate(160, 160, 0.25e-3, board, SurfaceLoss.constant(0));
    plate.refreshLosses();
    plate.addJoules(0, 0.25);
    double seconds = 2;
    int steps = plate.divisions(seconds);
    for (int k = 0; k < steps; k++) {
      plate.conduct(seconds / steps);
    }
    double spread = 4 * board.diffusivity() * seconds;
    double perArea = board.heatCapacity() * board.thicknessMetres();
    for (int i : new int[] {0, 20, 40}) {
      double squared = Math.pow((i + 0.5) * 0.25e-3, 2) + Math.pow(0.5 * 0.25e-3, 2);
      double expected = Math.exp(-squared / spread) / (Math.PI * spread * perArea);
      assertEquals(expected, plate.rise()[i], 3e-3 * expected);
    }
  }
}
