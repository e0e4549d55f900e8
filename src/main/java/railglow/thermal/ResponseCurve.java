package railglow.thermal;

import java.util.Arrays;

/**
 * What bodies show in the two channels by their time constants: in whole quarters, and in the
 * frames that a run used. Immutable.
 */
final class ResponseCurve {
  private final DetectionSettings settings;
  private final double cameraSeconds;
  private final double[] taus;
  private final FirstOrderResponse[] more;
  private final boolean isOfWholeQuarters;

  /**
   * @param cameraSeconds lag of the camera through which they are seen
   * @param taus time constants, s, ascending from 0
   * @param more what the frames used show of a body of each beyond what whole quarters do
   */
  ResponseCurve(
      DetectionSettings settings, double cameraSeconds, double[] taus, FirstOrderResponse[] more) {
    this.settings = settings;
    this.cameraSeconds = cameraSeconds;
    this.taus = taus.clone();
    this.more = more.clone();
    isOfWholeQuarters =
        Arrays.stream(more).allMatch(one -> one.inPhase() == 0 && one.quadrature() == 0);
  }

  /** Of frames that show whole quarters. */
  static ResponseCurve ofWholeQuarters(DetectionSettings settings) {
    return new FramesUsed(settings).ofSwings();
  }

  DetectionSettings settings() {
    return settings;
  }

  /** Time constants, s, ascending from 0, between which the curve hardly bends. */
  double[] taus() {
    return taus.clone();
  }

  /** Whether nothing is known of frames that show anything but whole quarters. */
  boolean isOfWholeQuarters() {
    return isOfWholeQuarters;
  }

  /** A body as whole quarters show it, as a share of its settled rise. */
  FirstOrderResponse whole(double bodySeconds) {
    return settings.response(bodySeconds, cameraSeconds);
  }

  /** A body as the frames used show it, likewise. */
  FirstOrderResponse seen(double bodySeconds) {
    FirstOrderResponse inWhole = whole(bodySeconds);
    if (isOfWholeQuarters) {
      return inWhole;
    }
    int above = Arrays.binarySearch(taus, bodySeconds);
    if (above < 0) {
      above = Math.min(-above - 1, taus.length - 1);
    }
    int below = Math.max(0, above - 1);
    double part = Math.min(1, part(bodySeconds, taus[below], taus[above]));
    double inPhase = between(more[below].inPhase(), more[above].inPhase(), part);
    double quadrature = between(more[below].quadrature(), more[above].quadrature(), part);
    return new FirstOrderResponse(inWhole.inPhase() + inPhase, inWhole.quadrature() + quadrature);
  }

  /** Where a time constant lies between two: in its logarithm, and evenly from 0 on. */
  private static double part(double tau, double from, double to) {
    if (to == from) {
      return 1;
    }
    return from > 0 ? Math.log(tau / from) / Math.log(to / from) : tau / to;
  }

  private static double between(double from, double to, double part) {
    return from + (to - from) * part;
  }
}
