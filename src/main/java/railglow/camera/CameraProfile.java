package railglow.camera;

/**
 * What must be known of a camera to use its frames; from the descriptor or measured.
 *
 * @param name as in reports
 * @param width pixels
 * @param height pixels
 * @param framesPerSecond nominal
 * @param kelvinPerCount the rise that one count (or one unit of a float image) means; NaN when
 *     unknown, then rises are in counts
 * @param celsiusAtZero the temperature of a count of zero; NaN when the camera has no absolute
 *     scale
 * @param noiseKelvin temporal noise of one pixel of one frame (NETD); NaN when unknown
 * @param latencySeconds from mid-exposure to arrival
 * @param timeConstantSeconds of the detector with the camera's own smoothing
 */
public record CameraProfile(
    String name,
    int width,
    int height,
    double framesPerSecond,
    double kelvinPerCount,
    double celsiusAtZero,
    double noiseKelvin,
    double latencySeconds,
    double timeConstantSeconds) {
  public boolean hasKelvin() {
    return !Double.isNaN(kelvinPerCount);
  }

  public boolean hasCelsius() {
    return hasKelvin() && !Double.isNaN(celsiusAtZero);
  }

  public double celsius(double value) {
    return celsiusAtZero + kelvinPerCount * value;
  }
}
