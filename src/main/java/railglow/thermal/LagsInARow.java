package railglow.thermal;

import java.util.function.DoubleFunction;

/**
 * What two lags of first order in a row show, body and camera in either order, from what one lag
 * shows: the weighted difference of the single ones, because the step response of two lags is.
 * Stateless.
 */
final class LagsInARow {
  private LagsInARow() {}

  /**
   * Any numbers that are linear in what is seen.
   *
   * @param single what one lag of a time constant, s, shows; always as many numbers
   * @param periodSeconds far shorter lags are none
   */
  static double[] of(
      DoubleFunction<double[]> single,
      double bodySeconds,
      double cameraSeconds,
      double periodSeconds) {
    double one = Math.max(bodySeconds, cameraSeconds);
    double two = Math.min(bodySeconds, cameraSeconds);
    if (two <= 1e-9 * periodSeconds) {
      return single.apply(one);
    }
    if (one - two < 1e-3 * one) {
      // equal lags: the limit is a derivative, taken here as a central difference
      double middle = (one + two) / 2;
      one = middle * 1.001;
      two = middle * 0.999;
    }
    double[] slow = single.apply(one);
    double[] fast = single.apply(two);
    double scale = 1 / (one - two);
    double[] both = new double[slow.length];
    for (int k = 0; k < both.length; k++) {
      both[k] = scale * (one * slow[k] - two * fast[k]);
    }
    return both;
  }
}
