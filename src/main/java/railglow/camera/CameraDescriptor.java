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
 * @param saturationSample the sample, as the camera writes it, at which its scale ends; NaN for the
 *     end of the sample type
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
    double saturationSample,
    double shutterSettlingSeconds) {
  private static final int LARGEST_COUNT = 0xFFFF;

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

  /** Decoded values at or above it mean "too much"; positive infinity when no end is known. */
  public double saturationValue() {
    if (!Double.isNaN(saturationSample)) {
      return decoded(saturationSample);
    }
    if (isFloat()) {
      return Double.POSITIVE_INFINITY;
    }
    return scale.hotIsDark() ? LARGEST_COUNT : decoded(layout.sample().largest());
  }

  /**
   * The hottest that its values can say, degrees Celsius; NaN without an absolute scale, positive
   * infinity when no end is known.
   */
  public double hottestCelsius() {
    double end = profile().celsius(saturationValue());
    return scale.isTable() ? Math.min(end, scale.hottestCelsius()) : end;
  }

  /** What decoding makes of a sample. */
  private double decoded(double sample) {
    if (scale.isTable()) {
      return scale.celsiusOf((int) Math.max(0, Math.min(LARGEST_COUNT, sample)));
    }
    double turned = scale.hotIsDark() ? -sample : sample;
    return switch (layout.sample()) {
      case F32 -> turned;
      case I16 -> turned + SampleType.SIGNED_OFFSET - (scale.hotIsDark() ? 1 : 0);
      default -> turned + (scale.hotIsDark() ? LARGEST_COUNT : 0);
    };
  }

  /** What the other rooms need. */
  public CameraProfile profile() {
    double kelvinPerCount = Math.abs(scale.kelvinPerCount());
    double zero = scale.celsiusAtZero();
    if (!scale.isTable()) {
      zero -= kelvinPerCount * decoded(0);
    }
    return new CameraProfile(
        name,
        layout.laidWidth(),
        layout.laidHeight(),
        framesPerSecond,
        kelvinPerCount,
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
        saturationSample,
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
        saturationSample,
        shutterSettlingSeconds);
  }
}
