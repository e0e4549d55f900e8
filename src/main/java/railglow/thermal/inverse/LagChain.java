package railglow.thermal.inverse;

import java.util.function.DoubleFunction;
import railglow.thermal.FirstOrderResponse;

/**
 * What a chain of first-order lags (plate, coat, camera) shows in the two channels. The step
 * response of distinct lags in a row is the weighted sum of the single ones, weights tau_i^(n-1) /
 * product(tau_i - tau_j), and so are the channels, which are linear in it. Pure.
 */
final class LagChain {
  /** Equal lags are moved apart by this share: an error of its square. */
  private static final double APART = 2e-3;

  private static final double NO_LAG = 1e-6;

  private LagChain() {}

  /**
   * @param single channels of one lag of a time constant, for the pulses in use
   * @param first time constant, s, 0 or more; second and third likewise, in any order
   * @param periodSeconds of the pulses
   */
  static FirstOrderResponse of(
      DoubleFunction<FirstOrderResponse> single,
      double first,
      double second,
      double third,
      double periodSeconds) {
    double[] tau = {first, second, third};
    java.util.Arrays.sort(tau);
    int n = 0;
    double[] kept = new double[3];
    for (double t : tau) {
      if (t > NO_LAG * periodSeconds) {
        double least = n == 0 ? t : kept[n - 1] * (1 + APART);
        kept[n++] = Math.max(t, least);
      }
    }
    if (n == 0) {
      return single.apply(0);
    }
    double inPhase = 0;
    double quadrature = 0;
    for (int i = 0; i < n; i++) {
      double weight = 1;
      for (int j = 0; j < n; j++) {
        weight *= j == i ? 1 : kept[i] / (kept[i] - kept[j]);
      }
      FirstOrderResponse response = single.apply(kept[i]);
      inPhase += weight * response.inPhase();
      quadrature += weight * response.quadrature();
    }
    return new FirstOrderResponse(inPhase, quadrature);
  }
}
