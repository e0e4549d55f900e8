package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class CodedPairsTest {
  /** A body of first order stepped through many pairs: no closed form of the code's. */
  private static double[] stepped(double tau, double period) {
    int n = 4000;
    double decay = -Math.expm1(-period / 4 / n / tau);
    double state = 0.5;
    double inPhase = 0;
    double quadrature = 0;
    int pairs = 40;
    for (int pair = 0; pair < pairs; pair++) {
      int sign = pair % 2 == 0 ? 1 : -1;
      double[] mean = new double[8];
      for (int k = 0; k < 8; k++) {
        boolean on = (k == 1 || k == 2 || k == 4 || k == 7) == (sign > 0);
        for (int i = 0; i < n; i++) {
          state += ((on ? 1 : 0) - state) * decay;
          mean[k] += state / n;
        }
      }
      if (pair < pairs / 2) {
        continue;
      }
      inPhase += sign * (mean[1] + mean[2] - mean[0] - mean[3]) / 4;
      inPhase -= sign * (mean[5] + mean[6] - mean[4] - mean[7]) / 4;
      quadrature += sign * (mean[2] + mean[3] - mean[0] - mean[1]) / 4;
      quadrature -= sign * (mean[6] + mean[7] - mean[4] - mean[5]) / 4;
    }
    return new double[] {2 * inPhase / pairs, 2 * quadrature / pairs};
  }

  @Test
  void theResponseToTheCodeIsThatOfABodySteppedThroughIt() {
    for (double tau : new double[] {0.1, 0.5, 2}) {
      double[] expected = stepped(tau, 2);
      FirstOrderResponse response = CodedResponse.of(tau, 2);
      assertEquals(expected[0], response.inPhase(), 3e-4, "in phase at " + tau);
      assertEquals(expected[1], response.quadrature(), 3e-4, "quadrature at " + tau);
    }
    assertEquals(1, CodedResponse.of(0, 2).inPhase());
  }

  private static QuarterMeans cycle(int number, float... quarters) {
    Plane[] planes = new Plane[4];
    for (int i = 0; i < 4; i++) {
      planes[i] = new Plane(1, 1, new float[] {quarters[i]});
    }
    return new QuarterMeans(
        number, planes[0], planes[1], planes[2], planes[3], new int[] {5, 5, 5, 5});
  }

  @Test
  void whatRepeatsWithThePeriodAndAStraightDriftCancelInAPair() {
    CodedPairs pairs = new CodedPairs();
    // signal 1; disturbance 0.5 in the middle of every cycle; drift of 0.1 a quarter
    assertTrue(pairs.take(cycle(6, 1.0f, 0.6f, 0.7f, 1.3f), true).isEmpty());
    QuarterMeans pair = pairs.take(cycle(7, 0.4f, 2.0f, 2.1f, 0.7f), false).orElseThrow();
    assertEquals(1, inPhase(pair), 1e-6);
    assertEquals(0, quadrature(pair), 1e-6);
  }

  private static double inPhase(QuarterMeans q) {
    return (q.q2().at(0, 0) + q.q3().at(0, 0) - q.q1().at(0, 0) - q.q4().at(0, 0)) / 2;
  }

  private static double quadrature(QuarterMeans q) {
    return (q.q3().at(0, 0) + q.q4().at(0, 0) - q.q1().at(0, 0) - q.q2().at(0, 0)) / 2;
  }

  @Test
  void aCycleWithoutItsPartnerIsLeftOut() {
    CodedPairs pairs = new CodedPairs();
    assertTrue(pairs.take(cycle(1, 0, 0, 0, 0), true).isEmpty());
    assertTrue(pairs.take(cycle(2, 0, 0, 0, 0), false).isEmpty());
    assertTrue(pairs.take(cycle(5, 0, 0, 0, 0), true).isEmpty());
    assertTrue(pairs.take(cycle(6, 0, 1, 1, 0), false).isEmpty());
    assertTrue(pairs.take(cycle(7, 1, 0, 0, 1), true).isPresent());
  }
}
