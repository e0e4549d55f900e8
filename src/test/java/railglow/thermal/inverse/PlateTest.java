package railglow.thermal.inverse;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.integration.IterativeLegendreGaussIntegrator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The plate against textbook solutions. Board: 1.6 mm with 70 um of copper, 20 W/(m^2 K), k =
 * 17.3494 W/mK by the rule of parallel conductors. Special functions from Abramowitz and Stegun,
 * Handbook of Mathematical Functions (NBS 1964).
 */
class PlateTest {
  private static final Plate BOARD = Plate.board(1.6e-3, 70e-6, 20);

  private static double integral(double low, double high, DoubleUnaryOperator f) {
    return new IterativeLegendreGaussIntegrator(24, 1e-10, 1e-14)
        .integrate(4_000_000, f::applyAsDouble, low, high);
  }

  @Test
  void copperAndLaminateConductInParallel() {
    // sum(k_i t_i)/t = 17.3494 W/mK and 2.330665e6 J/m3K; the stack's numbers computed by hand
    assertEquals(17.3494 * 1.6e-3, BOARD.sheetConductance(), 1e-6);
    assertEquals(2.330665e6 * 1.6e-3, BOARD.areaCapacity(), 0.01);
    assertEquals(7.44396e-6, BOARD.diffusivity(), 1e-10);
    assertEquals(186.453, BOARD.timeConstantSeconds(), 1e-2);
    assertEquals(37.2552e-3, BOARD.decayLengthMetres(), 1e-6);
  }

  /**
   * Thermal diffusion length sqrt(alpha / (pi f)), IUPAC Gold Book (PAC 93, 2021, 647; its web text
   * lost the root). Diffusivities from k, rho, c of Incropera and DeWitt; FR4 k 0.3 W/mK.
   */
  @ParameterizedTest
  @CsvSource({
    "silicon, 8.8e-5, 1, 5.2926",
    "silicon, 8.8e-5, 10, 1.6737",
    "silicon, 8.8e-5, 30, 0.9663",
    "silicon k148, 8.9213e-5, 1, 5.3289",
    "copper, 1.1660e-4, 1, 6.0921",
    "copper, 1.1660e-4, 10, 1.9265",
    "aluminium, 9.7135e-5, 1, 5.5605",
    "alumina, 1.1854e-5, 1, 1.9425",
    "tin, 4.0136e-5, 1, 3.5743",
    "FR4, 1.3158e-7, 1, 0.2047",
    "FR4, 1.3158e-7, 0.1, 0.6472",
    "mould compound, 4.678e-7, 1, 0.3859",
    "FR4 of 1.6 mm, 1.3158e-7, 0.016360, 1.6",
    "prepreg of 0.2 mm, 1.3158e-7, 1.0471, 0.2"
  })
  void heatReachesTheDiffusionLength(
      String material, double diffusivity, double hertz, double millimetres) {
    Plate plate = new Plate(diffusivity, 1, 0);
    assertEquals(
        millimetres, plate.diffusionLengthMetres(hertz) * 1e3, 3e-4 * millimetres, material);
  }

  @ParameterizedTest
  @CsvSource({"1, 21.4120", "2, 17.4497", "5, 12.2603", "10, 8.45780", "20, 4.96599"})
  void aSteadyPointSourceFollowsTheBesselFunction(double millimetres, double kelvin) {
    // T = P / (2 pi k t) K0(r / L) for 1 W, Carslaw and Jaeger, Conduction of Heat in Solids, 2nd
    // ed., chapter 10, evaluated with SciPy's k0; here as the sum of all momentary point sources
    double r = millimetres * 1e-3;
    double d = BOARD.diffusivity();
    double tau = BOARD.timeConstantSeconds();
    double sum =
        integral(
            -25,
            8,
            u -> {
              double t = Math.exp(u);
              return Math.exp(-r * r / (4 * d * t) - t / tau);
            });
    assertEquals(kelvin, sum / (4 * Math.PI * BOARD.sheetConductance()), 2e-5 * kelvin);
  }

  @ParameterizedTest
  @CsvSource({"1, 5.04309, -44.756", "2, 2.36327, -72.476", "5, 0.389768, -152.676"})
  void aPulsatingPointSourceFollowsTheKelvinFunctions(
      double millimetres, double kelvin, double degrees) {
    // 1 W at 0.5 Hz: K0(s r), s^2 = (h + i omega rho c t) / (k t), Carslaw and Jaeger, chapter 10,
    // evaluated with SciPy's kv
    double r = millimetres * 1e-3;
    double d = BOARD.diffusivity();
    double[] parts = new double[2];
    for (int part = 0; part < 2; part++) {
      double shift = part * Math.PI / 2;
      parts[part] =
          integral(
              1e-4,
              40,
              t ->
                  Math.exp(-r * r / (4 * d * t) - t / BOARD.timeConstantSeconds())
                      / t
                      * Math.cos(Math.PI * t + shift)
                      * fade(t, 40));
    }
    double scale = 1 / (4 * Math.PI * BOARD.sheetConductance());
    assertEquals(kelvin, scale * Math.hypot(parts[0], parts[1]), 2e-4 * kelvin);
    assertEquals(degrees, Math.toDegrees(Math.atan2(parts[1], parts[0])), 0.02);
  }

  /** Ends an oscillating integral smoothly. */
  private static double fade(double t, double end) {
    double x = Math.max(0, t / end - 0.25) / 0.75;
    return 1 - x * x * x * (10 - 15 * x + 6 * x * x);
  }

  @Test
  void theModesOfAGaussianSourceAddUpToTheExponentialIntegral() {
    // peak = P / (4 pi k t) exp(z) E1(z), z = s^2 / (2 L^2); E1(0.5), A and S table 5.1
    double s = BOARD.decayLengthMetres();
    double sum =
        integral(
            0,
            12 / s,
            k ->
                k
                    * Math.exp(-k * k * s * s / 2)
                    * BOARD.modeTimeConstantSeconds(k)
                    / BOARD.areaCapacity());
    double expected = Math.exp(0.5) * 0.5597735948 / (4 * Math.PI * BOARD.sheetConductance());
    assertEquals(expected, sum / (2 * Math.PI), 1e-8 * expected);
  }

  @Test
  void theMiddleOfADiscFollowsTheSecondBesselFunction() {
    // q / h (1 - a/L K1(a/L)) at a = L/2, Carslaw and Jaeger, chapter 10; K1(0.5), A and S table
    // 9.8; here in time: of a disc of heat 1 - exp(-a^2 / (4 D t)) is left in its middle
    double a = BOARD.decayLengthMetres() / 2;
    double d = BOARD.diffusivity();
    double tau = BOARD.timeConstantSeconds();
    double sum =
        integral(0, 40 * tau, t -> -Math.expm1(-a * a / (4 * d * t)) * Math.exp(-t / tau) / tau);
    assertEquals(1 - 0.5 * 1.6564411200, sum, 1e-6);
  }

  @Test
  void aLineSourceFallsOffExponentially() {
    // q' L / (2 k t) exp(-x / L), the fin equation, Incropera and DeWitt, chapter 3
    double length = BOARD.decayLengthMetres();
    double d = BOARD.diffusivity();
    double tau = BOARD.timeConstantSeconds();
    double x = 0.7 * length;
    double sum =
        integral(
            -20,
            4,
            u -> {
              double t = tau * Math.exp(u);
              return t
                  * Math.exp(-x * x / (4 * d * t) - t / tau)
                  / Math.sqrt(4 * Math.PI * d * t)
                  / BOARD.areaCapacity();
            });
    double expected = length / (2 * BOARD.sheetConductance()) * Math.exp(-0.7);
    assertEquals(expected, sum, 1e-6 * expected);
  }

  @Test
  void anImpossiblePlateIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> new Plate(0, 1, 1));
    assertThrows(IllegalArgumentException.class, () -> Plate.board(1e-3, 1e-3, 1));
  }
}
