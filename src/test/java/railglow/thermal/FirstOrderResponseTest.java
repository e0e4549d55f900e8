package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class FirstOrderResponseTest {
  private static final double[] PERIODS_PER_TAU = {1, 2, 4, 8, 20, 100};

  /**
   * Closed form of the mean of 1 - a exp(-t/tau) over the halves, in the steady state; the same six
   * numbers came from adaptive quadrature, scipy.integrate.quad 1.17.
   */
  @Test
  void inPhaseShareIsOneMinusATanh() {
    double[] expected = {0.020325, 0.075766, 0.238406, 0.517986, 0.800018, 0.960000};
    for (int k = 0; k < expected.length; k++) {
      FirstOrderResponse g = FirstOrderResponse.of(1 / PERIODS_PER_TAU[k], 1);
      assertEquals(expected[k], g.inPhase(), 1e-6 + 1e-5 * expected[k]);
    }
  }

  /** Windows shifted by a quarter of a period; numbers as above. */
  @Test
  void quadratureShareIsThatOfShiftedWindows() {
    double[] expected = {0.121825, 0.226362, 0.351946, 0.367099, 0.197305, 0.040000};
    for (int k = 0; k < expected.length; k++) {
      FirstOrderResponse g = FirstOrderResponse.of(1 / PERIODS_PER_TAU[k], 1);
      assertEquals(expected[k], g.quadrature(), 1e-6 + 1e-5 * expected[k]);
    }
  }

  /**
   * The same by way of frequencies: a square wave of 1 and -1 has the harmonics 4/(n pi), n odd
   * (Gradshteyn and Ryzhik, Table of Integrals, 1.442.1; 63.7, 21.2 and 12.7 for an amplitude of 50
   * at francescomarino.net/analisi/quadra4.htm), and a first-order body passes each with the gain
   * and phase of a resistor and a capacitor, 1/(1 + i n 2 pi tau/P), as textbooks of circuits have
   * it. What quarters see of a harmonic is its share of the square wave once more.
   */
  @Test
  void theHarmonicsOfASquareWaveAddUpToTheSame() {
    double[] harmonics = {1.2732395, 0, 0.4244132, 0, 0.2546479, 0, 0.1818914};
    double[] gains = {0.157177, 0.537029, 0.954028};
    double[] degrees = {-80.957, -57.518, -17.441};
    double[] periodsPerTau = {1, 4, 20};
    for (int k = 0; k < gains.length; k++) {
      double inPhase = 0;
      double quadrature = 0;
      for (int n = 1; n < 20_001; n += 2) {
        double amplitude = n <= 7 ? harmonics[n - 1] : 4 / (Math.PI * n);
        double lag = n * 2 * Math.PI / periodsPerTau[k];
        double gain = n == 1 ? gains[k] : 1 / Math.hypot(1, lag);
        double phase = n == 1 ? Math.toRadians(degrees[k]) : -Math.atan(lag);
        double share = amplitude * amplitude / 2 * gain;
        inPhase += share * Math.cos(phase);
        quadrature -= share * Math.sin(phase) * (n % 4 == 1 ? 1 : -1);
      }
      FirstOrderResponse g = FirstOrderResponse.of(1 / periodsPerTau[k], 1);
      assertEquals(inPhase, g.inPhase(), 3e-5);
      assertEquals(quadrature, g.quadrature(), 3e-5);
    }
  }

  @Test
  void aBodyThatFollowsAtOnceIsWhollyInPhase() {
    assertEquals(new FirstOrderResponse(1, 0), FirstOrderResponse.of(0, 2));
    assertEquals(new FirstOrderResponse(1, 0), FirstOrderResponse.of(0, 0, 2));
  }

  /** Two lags against a simulation of both, stepped finely until it repeats itself. */
  @Test
  void bodyAndCameraTogetherAgreeWithASimulation() {
    for (double[] lags : new double[][] {{0.4, 0.95}, {0.5, 0.5}, {2, 0.1}, {0.1, 2}}) {
      double period = 6;
      int n = 40_000;
      double dt = period / n;
      double body = 0;
      double seen = 0;
      double[] quarters = new double[4];
      for (int cycle = 0; cycle < 12; cycle++) {
        quarters = new double[4];
        for (int i = 0; i < n; i++) {
          double before = body;
          boolean on = i >= n / 4 && i < 3 * n / 4;
          body += ((on ? 1 : 0) - body) * -Math.expm1(-dt / lags[0]);
          seen += ((body + before) / 2 - seen) * -Math.expm1(-dt / lags[1]);
          quarters[i * 4 / n] += seen * 4 / n;
        }
      }
      FirstOrderResponse g = FirstOrderResponse.of(lags[0], lags[1], period);
      double inPhase = (quarters[1] + quarters[2] - quarters[0] - quarters[3]) / 2;
      double quadrature = (quarters[2] + quarters[3] - quarters[0] - quarters[1]) / 2;
      assertEquals(inPhase, g.inPhase(), 2e-4);
      assertEquals(quadrature, g.quadrature(), 2e-4);
    }
  }

  @Property(seed = "1")
  void theAngleGrowsWithEitherLag(
      @ForAll @DoubleRange(min = 0, max = 20) double tau,
      @ForAll @DoubleRange(min = 0, max = 3) double camera) {
    FirstOrderResponse g = FirstOrderResponse.of(tau, camera, 1);
    FirstOrderResponse slower = FirstOrderResponse.of(tau * 1.1 + 0.01, camera, 1);
    FirstOrderResponse lagging = FirstOrderResponse.of(tau, camera * 1.1 + 0.01, 1);
    assertTrue(slower.angle() > g.angle());
    assertTrue(lagging.angle() > g.angle());
    assertTrue(g.size() <= 1 + 1e-12);
  }
}
