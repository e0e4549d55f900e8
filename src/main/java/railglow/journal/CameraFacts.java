package railglow.journal;

/**
 * The camera as the run used it; the same meaning as the camera room's profile, kept apart because
 * a journal knows no device.
 *
 * @param sampleType "uint16" or "float32"
 * @param kelvinPerCount NaN when unknown
 * @param celsiusAtZero NaN when unknown
 * @param noiseKelvin NaN when unknown
 */
public record CameraFacts(
    String name,
    int width,
    int height,
    String sampleType,
    double framesPerSecond,
    double kelvinPerCount,
    double celsiusAtZero,
    double noiseKelvin,
    double latencySeconds,
    double timeConstantSeconds) {}
