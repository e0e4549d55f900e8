package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class SettledRiseTest {
  private static final DetectionSettings SETTINGS = DetectionSettings.usual(2, 0.01, 0.05, 4, 30);

  private static SettledRise of(double rise, double tau, double variance) {
    FirstOrderResponse g = SETTINGS.response(tau);
    return SettledRise.of(
        rise * g.inPhase(), rise * g.quadrature(), variance, variance, 0, 0, SETTINGS);
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
}
