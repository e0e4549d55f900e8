package railglow.thermal;

import java.util.function.DoubleFunction;

/**
 * What a body of first order shows in the two channels of a quarter cycle when it is driven by a
 * square wave, half ON and half OFF, in the steady state: in-phase I = (Q2+Q3-Q1-Q4)/2 and
 * quadrature C = (Q3+Q4-Q1-Q2)/2, both as a share of the final (settled) rise. Immutable.
 *
 * <p>One lag: with e the mean of exp(-t/tau) over the first quarter, q = exp(-P/(4 tau)) and a =
 * 1/(1+q^2): I = 1 - a e (1+q), which equals 1 - (4 tau/P) tanh(P/(4 tau)), and C = a e (1-q). Two
 * lags in a row (body and camera) are the weighted difference of the single ones, because the step
 * response of two lags is.
 *
 * @param inPhase share of the final rise seen in phase
 * @param quadrature share of the final rise seen in quadrature
 */
public record FirstOrderResponse(double inPhase, double quadrature) {

  /** Of one lag. A time constant of 0 gives (1, 0). */
  public static FirstOrderResponse of(double timeConstant, double period) {
    double u = 4 * timeConstant / period;
    if (!(u > 1e-9)) {
      return new FirstOrderResponse(1, 0);
    }
    double q = Math.exp(-1 / u);
    double oneMinusQ = -Math.expm1(-1 / u);
    double scaled = u * oneMinusQ / (1 + q * q);
    double inPhase = u > 50 ? 1 / (3 * u * u) - 2 / (15 * u * u * u * u) : 1 - u * Math.tanh(1 / u);
    return new FirstOrderResponse(inPhase, scaled * oneMinusQ);
  }

  /** Of two lags in a row, in either order. */
  public static FirstOrderResponse of(double bodySeconds, double cameraSeconds, double period) {
    return inARow(tau -> of(tau, period), bodySeconds, cameraSeconds, period);
  }

  /** Of two lags in a row in a pair of coded cycles, see {@link CodedPairs}. */
  public static FirstOrderResponse coded(double bodySeconds, double cameraSeconds, double period) {
    return inARow(tau -> CodedResponse.of(tau, period), bodySeconds, cameraSeconds, period);
  }

  /**
   * Of two lags in a row, in either order, from what one lag shows.
   *
   * @param single channels of one lag of a time constant
   */
  static FirstOrderResponse inARow(
      DoubleFunction<FirstOrderResponse> single,
      double bodySeconds,
      double cameraSeconds,
      double period) {
    double[] both =
        LagsInARow.of(tau -> single.apply(tau).channels(), bodySeconds, cameraSeconds, period);
    return new FirstOrderResponse(both[0], both[1]);
  }

  private double[] channels() {
    return new double[] {inPhase, quadrature};
  }

  /** Length of the vector (I, C): the share of the final rise that any one channel can collect. */
  public double size() {
    return Math.hypot(inPhase, quadrature);
  }

  /** Direction in the (I, C) plane in radians; grows with the lag, 0 for none. */
  public double angle() {
    return Math.atan2(quadrature, inPhase);
  }
}
