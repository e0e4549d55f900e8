package railglow.thermal.inverse;

import railglow.thermal.FirstOrderResponse;
import railglow.thermal.Plane;

/**
 * What the inversion starts from.
 *
 * @param inPhase mean ON minus OFF, K
 * @param quadrature mean slow part, K
 * @param sigmaInPhase noise of a pixel of it, K
 * @param sigmaQuadrature likewise
 * @param metresPerPixel on the board
 * @param opticsSigmaPixels blur of lens and pixel, Gaussian
 * @param emissivity of the board's surface: the share of a rise that is seen
 * @param periodSeconds of the pulses
 * @param cameraSeconds first-order lag of the camera
 * @param single channels of one first-order lag for these pulses
 */
public record RiseMaps(
    Plane inPhase,
    Plane quadrature,
    double sigmaInPhase,
    double sigmaQuadrature,
    double metresPerPixel,
    double opticsSigmaPixels,
    double emissivity,
    double periodSeconds,
    double cameraSeconds,
    java.util.function.DoubleFunction<FirstOrderResponse> single) {
  public RiseMaps {
    if (inPhase.width() != quadrature.width() || inPhase.height() != quadrature.height()) {
      throw new IllegalArgumentException("both channels must be of one size");
    }
    if (!(sigmaInPhase > 0 && sigmaQuadrature > 0)) {
      throw new IllegalArgumentException("an inversion needs the noise of both channels above 0");
    }
    if (!(metresPerPixel > 0 && emissivity > 0 && emissivity <= 1 && opticsSigmaPixels >= 0)) {
      throw new IllegalArgumentException(
          "a view of %s m a pixel, blur %s px, emissivity %s"
              .formatted(metresPerPixel, opticsSigmaPixels, emissivity));
    }
  }
}
