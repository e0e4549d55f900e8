package railglow.sim.heat;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/**
 * The plate against closed forms: 1.6 mm board with 70 um copper, k = 17.3494 W/mK, rho c =
 * 2.330665e6 J/m3K.
 */
class ThinPlateTest {
  private static final PlateMaterial BOARD = PlateMaterial.board(1.6e-3, 70e-6);
  private static final double KT = BOARD.conductivity() * BOARD.thicknessMetres();

  @Test
  void copperAndLaminateConductInParallel() {
    // Parallel rule with copper 390 W/mK 8930 kg/m3 385 J/kgK and laminate 0.3, 1900, 1200.
    assertEquals(17.3494, BOARD.conductivity(), 1e-3);
    assertEquals(2.330665e6, BOARD.heatCapacity(), 10);
  }

  @Test
  void anEvenlyWarmPlateCoolsExponentially() {
    ThinPlate plate = new ThinPlate(12, 9, 1e-3, BOARD, SurfaceLoss.constant(20));
    for (int i = 0; i < plate.rise().length; i++) {
      plate.addJoules(i, plate.cellCapacity());
    }
    run(plate, 186.453);
    // tau = rho c t / h = 186.453 s, Incropera and DeWitt, lumped capacitance.
    for (float rise : plate.rise()) {
      assertEquals(Math.exp(-1), rise, 2e-4);
    }
  }

  /**
   * What makers of boards print for the conductivity in the plane (pcbway.com, How to calculate
   * thermal conductivity in printed wiring boards, after Azar and Graebner): 0.8 + 350 Zcu/Z W/mK,
   * measured on boards; its example, 7 um in 50 mm, gives 0.849. The two agree where copper carries
   * the heat.
   */
  @Test
  void aBoardWithCopperConductsAsMeasuredBoardsDo() {
    assertEquals(0.849, 0.8 + 350 * 7e-6 / 50e-3, 1e-3 * 0.849);
    for (double copper : new double[] {70e-6, 105e-6, 140e-6, 210e-6}) {
      double published = 0.8 + 350 * copper / 1.6e-3;
      assertEquals(published, PlateMaterial.board(1.6e-3, copper).conductivity(), 0.12 * published);
    }
  }

  /**
   * A first-order body under square pulses, half ON, swings by tanh(P/(4 tau)) of its final rise
   * from end to end, as a resistor and a capacitor do (textbooks of circuits; own derivation).
   */
  @Test
  void anEvenlyHeatedPlateSwingsAsAFirstOrderBodyDoes() {
    double tau = BOARD.heatCapacity() * BOARD.thicknessMetres() / 20;
    double[] periodsPerTau = {1, 4, 20};
    double[] expected = {0.244919, 0.761594, 0.999909};
    for (int k = 0; k < expected.length; k++) {
      ThinPlate plate = new ThinPlate(4, 3, 1e-3, BOARD, SurfaceLoss.constant(20));
      double half = periodsPerTau[k] * tau / 2;
      int parts = 4000;
      double highest = 0;
      for (int n = 0; n < 12; n++) {
        // 20 W/m^2, against a loss of 20 W/(m^2 K): a final rise of 1 K
        heat(plate, half / parts, parts, 12 * 20 * 1e-6);
        highest = plate.rise()[5];
        heat(plate, half / parts, parts, 0);
      }
      assertEquals(expected[k], highest - plate.rise()[5], 2e-3);
    }
  }

  private static void heat(ThinPlate plate, double seconds, int parts, double watts) {
    for (int k = 0; k < parts; k++) {
      plate.addEvenly(watts * seconds);
      run(plate, seconds);
    }
  }

  /**
   * Heat put at once into one end of a bar brings the far end to half of its last rise at 1.369756
   * L^2 / (pi^2 a) (Parker, Jenkins, Butler, Abbott, J. Appl. Phys. 32, 1961, p. 1679): how the
   * diffusivity of materials is measured.
   */
  @Test
  void aFlashAtOneEndReachesTheOtherAsTheFlashMethodSays() {
    int cells = 100;
    double length = cells * 0.5e-3;
    ThinPlate plate = new ThinPlate(cells, 3, 0.5e-3, BOARD, SurfaceLoss.constant(0));
    for (int row = 0; row < 3; row++) {
      plate.addJoules(row * cells, cells * plate.cellCapacity());
    }
    double step = 0.02;
    double seconds = 0;
    while (plate.rise()[cells - 1] < 0.5) {
      run(plate, step);
      seconds += step;
    }
    // heat begins in the middle of the first cell and is seen in the middle of the last
    double published = 1.369756 * length * length / (Math.PI * Math.PI * BOARD.diffusivity());
    assertEquals(published, seconds, 0.01 * published);
  }

  @Test
  void aSteadyPointSourceFollowsTheBesselFunction() {
    // A source in the corner of an insulated quarter plane is a quarter of one in the full plane.
    ThinPlate plate = new ThinPlate(150, 150, 1e-3, BOARD, SurfaceLoss.constant(20));
    double dt = 900.0 / plate.divisions(900);
    plate.refreshLosses();
    for (int k = 0; k < plate.divisions(900); k++) {
      plate.addJoules(0, 0.25 * dt);
      plate.conduct(dt);
    }
    double length = Math.sqrt(KT / 20);
    assertEquals(37.2552e-3, length, 1e-6);
    // T = P / (2 pi k t) K0(r / L), Carslaw and Jaeger, chapter 10; K0 from Abramowitz and Stegun,
    // Handbook of Mathematical Functions, table 9.8. The plate ends at 4 L, the time at 4.8 tau.
    double scale = 1 / (2 * Math.PI * KT);
    assertEquals(scale * 2.4270690247, riseAt(plate, 0.1 * length), 0.012 * scale * 2.427);
    assertEquals(scale * 0.9244190712, riseAt(plate, 0.5 * length), 0.015 * scale * 0.924);
    assertEquals(scale * 0.4210244382, riseAt(plate, 1.0 * length), 0.025 * scale * 0.421);
  }

  @Test
  void aPulsatingPointSourceFollowsTheKelvinFunctions() {
    ThinPlate plate = new ThinPlate(96, 96, 0.25e-3, BOARD, SurfaceLoss.constant(20));
    int perPeriod = plate.divisions(2.0);
    double dt = 2.0 / perPeriod;
    double[] radii = {1e-3, 2e-3, 5e-3};
    double[] sine = new double[3];
    double[] cosine = new double[3];
    plate.refreshLosses();
    for (int k = 0; k < 14 * perPeriod; k++) {
      double phase = 2 * Math.PI * (k + 0.5) / perPeriod;
      plate.addJoules(0, 0.25 * Math.sin(phase) * dt);
      plate.conduct(dt);
      for (int i = 0; i < 3 && k >= 8 * perPeriod; i++) {
        double rise = riseAt(plate, radii[i]);
        sine[i] += rise * Math.sin(phase) / (3 * perPeriod);
        cosine[i] += rise * Math.cos(phase) / (3 * perPeriod);
      }
    }
    // 1 W at 0.5 Hz: T = P / (2 pi k t) K0(s r), s^2 = (h + i omega rho c t) / (k t), Carslaw and
    // Jaeger, chapter 10, evaluated with SciPy's kv.
    double[] amplitudes = {5.04309, 2.36327, 0.389768};
    double[] degrees = {-44.756, -72.476, -152.676};
    for (int i = 0; i < 3; i++) {
      assertEquals(amplitudes[i], Math.hypot(sine[i], cosine[i]), 0.03 * amplitudes[i]);
      assertEquals(degrees[i], Math.toDegrees(Math.atan2(cosine[i], sine[i])), 1.5);
    }
  }

  @Test
  void noStepLengthMakesItUnstable() {
    for (double seconds : new double[] {0.001, 0.04, 0.114, 1, 30}) {
      ThinPlate plate = new ThinPlate(20, 20, 0.5e-3, BOARD, SurfaceLoss.constant(10));
      plate.addJoules(210, 0.5);
      double highest = plate.rise()[210];
      for (int i = 0; i < 20; i++) {
        run(plate, seconds);
      }
      for (float rise : plate.rise()) {
        assertTrue(rise >= 0 && rise <= highest, "rise " + rise + " at steps of " + seconds);
      }
    }
  }

  @Test
  void radiationAloneMatchesItsLinearCoefficient() {
    // 4 eps sigma T^3 at 300 K and eps 0.9 is 5.5116 W/m2K a face; from Stefan-Boltzmann's law.
    SurfaceLoss loss = SurfaceLoss.levelPlateInAir(0.1, 0.9, 300);
    assertEquals(2 * 5.51160, loss.coefficient(1e-9), 0.02);
    // Cengel, Heat Transfer: 1.32 (20/0.1)^0.25 = 4.964 up, 0.59 (20/0.1)^0.25 = 2.2188 down.
    double radiation = 2 * 0.9 * SurfaceLoss.STEFAN_BOLTZMANN * (320.0 * 320 + 300 * 300) * 620;
    assertEquals(4.9640 + 2.2188, loss.coefficient(20) - radiation, 1e-3);
  }

  private static void run(ThinPlate plate, double seconds) {
    plate.refreshLosses();
    int divisions = plate.divisions(seconds);
    for (int k = 0; k < divisions; k++) {
      plate.conduct(seconds / divisions);
    }
  }

  /** Along the first row, whose cell centres are half a cell from the edge; linear in ln r. */
  private static double riseAt(ThinPlate plate, double radius) {
    double cell = plate.cellMetres();
    int left = (int) (radius / cell - 0.5);
    double inner = Math.hypot((left + 0.5) * cell, 0.5 * cell);
    double outer = Math.hypot((left + 1.5) * cell, 0.5 * cell);
    double share = (Math.log(radius) - Math.log(inner)) / (Math.log(outer) - Math.log(inner));
    return plate.rise()[left] + share * (plate.rise()[left + 1] - plate.rise()[left]);
  }
}
