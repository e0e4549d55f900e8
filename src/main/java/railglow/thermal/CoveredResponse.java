package railglow.thermal;

import java.util.function.DoubleFunction;

/**
 * What a place shows whose heat passes through something slower to follow, a coat, a package, a
 * label: two bodies of first order in a row, the one under the other half as slow. It turns later
 * than one body of the same delay, and more smoothly. Stateless.
 */
final class CoveredResponse {
  private CoveredResponse() {}

  /**
   * Shares of the settled rise.
   *
   * @param seconds the longer time constant
   * @param shown what one body of a time constant shows
   */
  static FirstOrderResponse of(double seconds, DoubleFunction<FirstOrderResponse> shown) {
    FirstOrderResponse slow = shown.apply(seconds);
    FirstOrderResponse fast = shown.apply(seconds / 2);
    // the weighted difference of LagsInARow for a ratio of 2
    return new FirstOrderResponse(
        2 * slow.inPhase() - fast.inPhase(), 2 * slow.quadrature() - fast.quadrature());
  }
}
