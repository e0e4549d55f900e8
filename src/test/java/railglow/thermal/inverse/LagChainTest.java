package railglow.thermal.inverse;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import railglow.thermal.FirstOrderResponse;

class LagChainTest {
  private static FirstOrderResponse chain(double a, double b, double c) {
    return LagChain.of(tau -> FirstOrderResponse.of(tau, 2), a, b, c, 2);
  }

  /** Steps through many periods in small steps: no closed form shared with the code. */
  private static double[] stepped(double... lags) {
    int n = 40_000;
    double dt = 2.0 / n;
    double[] state = new double[lags.length];
    double[] quarters = new double[4];
    for (int k = 0; k < 30 * n; k++) {
      int quarter = k % n * 4 / n;
      double in = quarter == 1 || quarter == 2 ? 1 : 0;
      for (int j = 0; j < lags.length; j++) {
        state[j] += (in - state[j]) * -Math.expm1(-dt / lags[j]);
        in = state[j];
      }
      if (k >= 29 * n) {
        quarters[quarter] += in * 4 / n;
      }
    }
    return new double[] {
      (quarters[1] + quarters[2] - quarters[0] - quarters[3]) / 2,
      (quarters[2] + quarters[3] - quarters[0] - quarters[1]) / 2
    };
  }

  @Test
  void threeLagsInARowAreThoseOfAStepwiseIntegration() {
    double[] expected = stepped(0.5, 0.2, 0.05);
    assertEquals(expected[0], chain(0.05, 0.5, 0.2).inPhase(), 2e-4);
    assertEquals(expected[1], chain(0.05, 0.5, 0.2).quadrature(), 2e-4);
  }

  @Test
  void equalLagsAreNoSingularity() {
    double[] expected = stepped(0.2, 0.2, 0.2);
    assertEquals(expected[0], chain(0.2, 0.2, 0.2).inPhase(), 2e-3);
    assertEquals(expected[1], chain(0.2, 0.2, 0.2).quadrature(), 2e-3);
  }

  @Test
  void noLagFollowsAtOnceAndOneIsTheSingleOne() {
    assertEquals(1, chain(0, 0, 0).inPhase());
    assertEquals(FirstOrderResponse.of(0.7, 2), chain(0, 0.7, 0));
  }
}
