package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class SettledRiseTest {
  private static final DetectionSettings SETTINGS = DetectionSettings.usual(2, 0.01, 0.05, 4, 30);
  private static final ResponseCurve CURVE = ResponseCurve.ofWholeQuarters(SETTINGS);

  private static SettledRise of(double rise, double tau, double variance) {
    FirstOrderResponse g = SETTINGS.response(tau);
    return SettledRise.of(
        new Amplitudes(rise * g.inPhase(), rise * g.quadrature(), variance, variance, 0), 0, CURVE);
  }

  /** Amplitudes known to a ten-thousandth: no step of the time constants searched may show. */
  @Test
  void theRiseOfAStrongSourceIsTrueWhateverItsTimeConstant() {
    for (double tau = 0.05; tau < 5; tau *= 1.033) {
      SettledRise settled = of(0.7, tau, 1e-10);
      assertEquals(0.7, settled.kelvin(), 0.7 * 0.002, "tau " + tau);
      assertEquals(tau, settled.timeConstantSeconds(), 0.005 * tau + 0.001);
      assertTrue(settled.interval95().contains(0.7), () -> settled.toString());
    }
  }

  @Test
  void aBodyThatFollowsAtOnceHasTheRiseThatIsSeen() {
    SettledRise settled = of(0.1, 0, 1e-6);
    assertEquals(0.1, settled.kelvin(), 0.002);
    assertEquals(0, settled.timeConstantSeconds(), 0.02);
  }

  /** Equal weight per octave from 0.1 s to the slowest: heat that spreads, no single body. */
  @Test
  void heatThatSpreadsSettlesWithinTheInterval() {
    FirstOrderResponse g = SheetResponse.of(0.1, 6, SETTINGS::response);
    SettledRise settled =
        SettledRise.of(
            new Amplitudes(0.7 * g.inPhase(), 0.7 * g.quadrature(), 1e-8, 1e-8, 0), 0, CURVE);
    assertTrue(settled.kelvin() < 0.6, () -> "one body settles lower: " + settled);
    assertTrue(settled.interval95().contains(0.7), () -> settled.toString());
    assertEquals(0.7, settled.interval95().high(), 0.01);
  }

  /** Later than any body: the misfit, 50 times the noise, is the size of the error. */
  @Test
  void amplitudesThatNoBodyGivesAreNotTakenForExact() {
    SettledRise settled = SettledRise.of(new Amplitudes(-0.05, 0.1, 1e-6, 1e-6, 0), 0, CURVE);
    assertTrue(settled.interval95().low() < 0.3 * settled.kelvin(), () -> settled.toString());
  }

  /** No body shows more of its rise in step with pulses than all of it. */
  @Test
  void noPlaceSettlesLowerThanItSwings() {
    SettledRise settled = SettledRise.of(new Amplitudes(-0.026, 0.026, 1e-4, 1e-4, 0), 0, CURVE);
    assertTrue(settled.interval95().low() < 0.02, () -> settled.toString());
    SettledRise bounded = settled.notBelow(0.02);
    assertEquals(0.02, bounded.interval95().low());
    assertEquals(settled.interval95().high(), bounded.interval95().high());
  }

  @Test
  void weightsThatSeeTheSameRiseLeaveTheIntervalAsItIs() {
    SettledRise settled = of(0.7, 0.5, 1e-6);
    assertEquals(settled, settled.withShapes(List.of(oneBody(0.7))));
    SettledRise lower = settled.withShapes(List.of(oneBody(0.5)));
    assertEquals(0.5, lower.interval95().low(), 0.02);
    assertEquals(settled.interval95().high(), lower.interval95().high(), 1e-12);
  }

  private static SettledRise oneBody(double rise) {
    FirstOrderResponse g = SETTINGS.response(0.5);
    return SettledRise.ofOneBody(
        new Amplitudes(rise * g.inPhase(), rise * g.quadrature(), 1e-5, 1e-5, 0), CURVE);
  }
}
