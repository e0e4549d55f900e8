package railglow.thermal.radiometry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RadiationLawTest {
  /**
   * The blackbody radiation functions of Incropera and DeWitt, Table 12.1; the printed fifth
   * decimal rests on an older second radiation constant, hence 6e-5.
   */
  @ParameterizedTest
  @CsvSource({
    "2000, 0.066728, 0.066730",
    "2898, 0.250108, 0.250106",
    "4000, 0.480877, 0.480865",
    "6000, 0.737818, 0.737789",
    "10000, 0.914199, 0.914157"
  })
  void theFractionBelowAWavelengthIsTheHandbooks(
      double micrometreKelvin, double printed, double exact) {
    assertEquals(printed, PlanckBand.fractionBelow(micrometreKelvin), 6e-5);
    assertEquals(exact, PlanckBand.fractionBelow(micrometreKelvin), 2e-6);
  }

  /** Computed from Planck's law with CODATA 2018 constants (scipy's integration). */
  @ParameterizedTest
  @CsvSource({
    "293.15, 0.370397, 2.46860, 4.6655",
    "300, 0.375742, 2.63209, 4.5755",
    "310, 0.382114, 2.87291, NaN",
    "323.15, 0.388094, 3.19166, 4.2979"
  })
  void theLongWaveBandAgreesWithIntegrationBySomebodyElse(
      double kelvin, double fraction, double slope, double power) {
    assertEquals(fraction, PlanckBand.LONG_WAVE.fraction(kelvin), 1e-6);
    assertEquals(slope, PlanckBand.LONG_WAVE.slope(kelvin), 1e-4 * slope);
    if (!Double.isNaN(power)) {
      double n = PlanckBand.LONG_WAVE.slope(kelvin) * kelvin / PlanckBand.LONG_WAVE.signal(kelvin);
      assertEquals(power, n, 1e-3);
    }
  }

  @Test
  void theLongWaveExitanceAt300KelvinIsRight() {
    assertEquals(172.5786, PlanckBand.LONG_WAVE.signal(300), 1e-5 * 172.5786);
  }

  /** CODATA 2018: sigma T^4. */
  @Test
  void theTotalIsStefanAndBoltzmanns() {
    TotalRadiation total = new TotalRadiation();
    assertEquals(459.3003, total.signal(300), 1e-6 * 459.3);
    assertEquals(418.7659, total.signal(293.15), 1e-6 * 418.8);
    assertEquals(6.12400, total.slope(300), 1e-5);
  }

  /** Sakuma and Hattori's A and B of an evenly weighted 8-14 um band, and the signal's ratios. */
  @Test
  void sakumaAndHattorisFormHasItsPublishedConstants() {
    SakumaHattori law = SakumaHattori.forBand(8, 14);
    assertEquals(9.36364, law.a(), 1e-5 * 9.4);
    assertEquals(178.3608, law.b(), 1e-5 * 178);
    double[] kelvin = {273.15, 293.15, 323.15, 373.15};
    double[] ratio = {0.640528, 0.898985, 1.389523, 2.484849};
    double[] planck = {0.639901, 0.898776, 1.390526, 2.489891};
    for (int i = 0; i < kelvin.length; i++) {
      assertEquals(ratio[i], law.signal(kelvin[i]) / law.signal(300), 1e-5 * ratio[i]);
      assertEquals(
          planck[i],
          PlanckBand.LONG_WAVE.signal(kelvin[i]) / PlanckBand.LONG_WAVE.signal(300),
          1e-5 * planck[i]);
    }
  }

  @Property(tries = 80, seed = "1")
  void everyLawIsUndoneByItsInverseAndItsSlopeIsItsDerivative(
      @ForAll @DoubleRange(min = 180, max = 700) double kelvin) {
    for (RadiationLaw law :
        List.of(new TotalRadiation(), PlanckBand.LONG_WAVE, SakumaHattori.forBand(8, 14))) {
      assertEquals(kelvin, law.absoluteKelvin(law.signal(kelvin)), 1e-11 * kelvin);
      double numeric = (law.signal(kelvin + 0.01) - law.signal(kelvin - 0.01)) / 0.02;
      assertEquals(numeric, law.slope(kelvin), 1e-6 * numeric);
      assertTrue(Double.isNaN(law.absoluteKelvin(0)));
    }
  }
}
