package railglow.thermal.radiometry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SurfaceTest {
  private static Surface surface(double emissivity) {
    return new Surface(emissivity, 0, 23, 0);
  }

  /**
   * The measurement equation (ISO 18434-1; Usamentiaga et al., Sensors 14, 2014) at 40 and 23 degC.
   */
  @ParameterizedTest
  @CsvSource({
    "0.95, 39.2138, 39.2065",
    "0.9, 38.4216, 38.4078",
    "0.5, 31.8552, 31.8165",
    "0.1, 24.8349, 24.8210",
    "0.05, 23.9217, 23.9144"
  })
  void aSurfaceLooksAsTheMeasurementEquationSays(double emissivity, double total, double band) {
    assertEquals(total, surface(emissivity).apparentCelsius(new TotalRadiation(), 40), 1e-4);
    assertEquals(band, surface(emissivity).apparentCelsius(PlanckBand.LONG_WAVE, 40), 1e-4);
    assertEquals(
        40, surface(emissivity).trueCelsius(PlanckBand.LONG_WAVE, band).value(), 1e-4 / emissivity);
  }

  @ParameterizedTest
  @CsvSource({"0.9, 0.9004", "0.1, 0.1004", "0.05, 0.0502"})
  void aStepOfOneKelvinShowsItsEmissivitysShare(double emissivity, double seen) {
    double apparent = surface(emissivity).apparentCelsius(PlanckBand.LONG_WAVE, 24) - 23;
    assertEquals(seen, apparent, 1e-3);
    Surface.Estimate rise =
        surface(emissivity)
            .trueRiseKelvin(PlanckBand.LONG_WAVE, 23, new Surface.Estimate(apparent, 0));
    assertEquals(1.0, rise.value(), 1e-6);
  }

  @Test
  void statedErrorsAreTheScatterOfManyDraws() {
    Surface known = new Surface(0.6, 0.03, 25, 1.5);
    Surface.Estimate temperature = known.trueCelsius(PlanckBand.LONG_WAVE, 35);
    Surface.Estimate rise =
        known.trueRiseKelvin(PlanckBand.LONG_WAVE, 26, new Surface.Estimate(3, 0.1));
    Random random = new Random(1);
    int draws = 2000;
    double temperatureSquares = 0;
    double riseSquares = 0;
    for (int i = 0; i < draws; i++) {
      Surface drawn =
          new Surface(0.6 + 0.03 * random.nextGaussian(), 0, 25 + 1.5 * random.nextGaussian(), 0);
      double t = drawn.trueCelsius(PlanckBand.LONG_WAVE, 35).value();
      double r =
          drawn
              .trueRiseKelvin(
                  PlanckBand.LONG_WAVE,
                  26,
                  new Surface.Estimate(3 + 0.1 * random.nextGaussian(), 0))
              .value();
      temperatureSquares += Math.pow(t - temperature.value(), 2) / draws;
      riseSquares += Math.pow(r - rise.value(), 2) / draws;
    }
    // 2000 draws know a standard deviation to 1.6 %; the laws' curvature adds a little.
    assertEquals(temperature.sigma(), Math.sqrt(temperatureSquares), 0.08 * temperature.sigma());
    assertEquals(rise.sigma(), Math.sqrt(riseSquares), 0.08 * rise.sigma());
  }

  @Test
  void bareMetalIsMarkedAndImpossibleSurfacesAreRefused() {
    assertTrue(surface(0.05).isBareMetal());
    assertFalse(surface(0.9).isBareMetal());
    assertTrue(Double.isNaN(surface(0.05).trueCelsius(PlanckBand.LONG_WAVE, -60).value()));
    assertThrows(IllegalArgumentException.class, () -> new Surface(0, 0, 23, 0));
    assertThrows(IllegalArgumentException.class, () -> new Surface(1.1, 0, 23, 0));
    assertThrows(IllegalArgumentException.class, () -> new Surface(0.9, 0.1, -300, 0));
  }
}
