package railglow.thermal.inverse;

import java.util.List;
import railglow.thermal.Plane;

/**
 * Where heat arises and how much. The plane is owned by the receiver.
 *
 * @param wattsPerSquareMetre power per area while ON, 0 or more; of the whole picture, 0 outside
 *     the window
 * @param noiseWattsPerSquareMetre standard deviation of a pixel of the unconstrained map
 * @param window the part of the picture that was inverted
 * @param resolutionPixels full width at half height of the image of a point source
 * @param metresPerPixel on the board
 * @param plate as it was used, its diffusivity fitted where it was not given
 * @param lagSeconds of what covers the plate, fitted
 * @param contactResistance between parts and plate, K m^2/W, fitted
 * @param misfit standard deviation of the residuals in units of the measured noise: above 1 is what
 *     the model can't explain
 * @param seenWatts all power in view around the places
 * @param noiseWatts standard deviation of it by pixel noise alone
 * @param places that can be told apart, strongest first
 */
public record PowerMap(
    Plane wattsPerSquareMetre,
    double noiseWattsPerSquareMetre,
    Window window,
    double resolutionPixels,
    double metresPerPixel,
    Plate plate,
    double lagSeconds,
    double contactResistance,
    double misfit,
    double seenWatts,
    double noiseWatts,
    List<PowerPlace> places) {
  public PowerMap {
    places = List.copyOf(places);
  }

  public double resolutionMillimetres() {
    return resolutionPixels * metresPerPixel * 1e3;
  }
}
