package railglow.journal;

/**
 * The camera as the run used it; the same meaning as the camera room's profile, kept apart because
 * a journal knows no device.
 *
 * @param sampleType "uint16" or "float32"
 * @param kelvinPerCount NaN when unknown
 * @param celsiusAtZero NaN when unknown
 * @param noiseKelvin NaN when unknown
 * @param numbersAreCounted whether frame numbers come from the camera, so that a lost frame leaves
 *     a gap
 * @param timesAreExposures whether arrivals are the camera's own times of a recording
 * @param shutterSettlingSeconds how long after a shutter event frames are not used
 * @param saturationValue samples at or above it are at the end of the camera's scale; infinite when
 *     that is not known
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
    double timeConstantSeconds,
    boolean numbersAreCounted,
    boolean timesAreExposures,
    double shutterSettlingSeconds,
    double saturationValue) {}
