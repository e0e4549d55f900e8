package railglow.camera;

/**
 * Everything a file says of a camera. Where its frames come from (the address) belongs to the
 * bench.
 *
 * @param name as in reports
 * @param framesPerSecond nominal
 * @param noiseKelvin temporal noise of one pixel of one frame; NaN when unknown
 * @param latencySeconds from mid-exposure to arrival
 * @param timeConstantSeconds of the detector with the camera's own smoothing
 * @param saturationValue decoded values at or above it mean "too much"; positive infinity when not
 *     known
 * @param shutterSettlingSeconds how long after a shutter event frames are not to be used
 */
public record CameraDescriptor(
    String name,
    RawLayout layout,
    CountScale scale,
    double framesPerSecond,
    double noiseKelvin,
    double latencySeconds,
    double timeConstantSeconds,
    double saturationValue,
    double shutterSettlingSeconds) {
  public CameraDescriptor {
    if (!(framesPerSecond > 0)) {
      throw new IllegalArgumentException("a camera of " + framesPerSecond + " frames a second");
    }
    if (!(latencySeconds >= 0) || !(timeConstantSeconds >= 0) || !(shutterSettlingSeconds >= 0)) {
      throw new IllegalArgumentException("latency, time constant and settling can't be negative");
    }
    if (scale.isTable() && layout.sample() == SampleType.F32) {
      throw new IllegalArgumentException("a table of counts can't be used on float samples");
    }
  }

  /** Whether its images are floats; else they are counts. */
  public boolean isFloat() {
    return layout.sample() == SampleType.F32 || scale.isTable();
  }

  /** Whether frame numbers come from the camera, so that a lost frame leaves a gap in them. */
  public boolean numbersAreCounted() {
    Telemetry telemetry = layout.telemetry();
    return telemetry.counter().isPresent() || telemetry.time().isPresent();
  }

  /** What the other rooms need. */
  public CameraProfile profile() {
    double zero = scale.celsiusAtZero();
    if (layout.sample() == SampleType.I16 && !scale.isTable()) {
      zero -= scale.kelvinPerCount() * SampleType.SIGNED_OFFSET;
    }
    return new CameraProfile(
        name,
        layout.laidWidth(),
        layout.laidHeight(),
        framesPerSecond,
        scale.kelvinPerCount(),
        zero,
        noiseKelvin,
        latencySeconds,
        timeConstantSeconds);
  }

  /** The same camera with measured times in place of the file's. */
  public CameraDescriptor withTimes(double newLatencySeconds, double newTimeConstantSeconds) {
    return new CameraDescriptor(
        name,
        layout,
        scale,
        framesPerSecond,
        noiseKelvin,
        newLatencySeconds,
        newTimeConstantSeconds,
        saturationValue,
        shutterSettlingSeconds);
  }

  /** The same camera with measured noise of one pixel of one frame in place of the file's. */
  public CameraDescriptor withNoise(double newNoiseKelvin) {
    return new CameraDescriptor(
        name,
        layout,
        scale,
        framesPerSecond,
        newNoiseKelvin,
        latencySeconds,
        timeConstantSeconds,
        saturationValue,
        shutterSettlingSeconds);
  }
}
