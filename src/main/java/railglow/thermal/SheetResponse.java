package railglow.thermal;

import java.util.function.DoubleFunction;

/**
 * What a place shows from which heat spreads in a sheet: its rise under steady power grows with the
 * logarithm of time (Carslaw and Jaeger, Conduction of Heat in Solids, 1959, chapter X: the line
 * source) between the time that heat takes through the source itself and the time after which it is
 * lost. That is a mixture of first-order bodies with equal weight per octave of the time constant.
 * Beside it {@link FirstOrderResponse} is the other extreme, all weight at one time constant: of
 * all mixtures that give the same two amplitudes that one settles lowest, since the curve of (I, C)
 * over the time constant is convex. Stateless.
 */
final class SheetResponse {
  /** Of Simpson's rule over the logarithm; even. */
  private static final int STEPS = 24;

  private SheetResponse() {}

  /**
   * Shares of the settled rise.
   *
   * @param fastest time constant in seconds, above 0
   * @param slowest time constant in seconds; one body where it is not above the fastest
   * @param shown what one body of a time constant shows
   */
  static FirstOrderResponse of(
      double fastest, double slowest, DoubleFunction<FirstOrderResponse> shown) {
    double octaves = Math.log(slowest / fastest);
    if (!(octaves > 1e-6)) {
      return shown.apply(slowest);
    }
    double inPhase = 0;
    double quadrature = 0;
    for (int k = 0; k <= STEPS; k++) {
      double weight = (k == 0 || k == STEPS ? 1 : k % 2 == 1 ? 4 : 2) / (3.0 * STEPS);
      FirstOrderResponse body = shown.apply(fastest * Math.exp(octaves * k / STEPS));
      inPhase += weight * body.inPhase();
      quadrature += weight * body.quadrature();
    }
    return new FirstOrderResponse(inPhase, quadrature);
  }
}
