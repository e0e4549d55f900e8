package railglow.sim.picture;

/**
 * How good or bad the simulated camera is. All temperatures in kelvin, all times in seconds.
 *
 * @param width pixels
 * @param height pixels
 * @param framesPerSecond nominal
 * @param noiseKelvin of one pixel from frame to frame (NETD), before any smoothing
 * @param fixedPatternKelvin standing differences between pixels
 * @param rowNoiseKelvin whole rows that move together, changing over about a second
 * @param columnNoiseKelvin whole columns, likewise
 * @param driftKelvin of the whole picture, standard deviation over a minute
 * @param lagSeconds time constant of the detector
 * @param smoothingWeight of the newest frame in the camera's own recursive filter; 1 for none
 * @param shutterEverySeconds 0 for never
 * @param shutterSeconds without frames at each shutter event
 * @param warmUpKelvin fall of the whole picture after the start
 * @param warmUpSeconds its time constant
 * @param latencySeconds from mid-exposure to the first byte on the wire
 * @param lateSeconds extra latency of a late frame
 * @param lateShare of frames that are late, 0 to 1
 * @param droppedShare of frames that are lost
 * @param repeatedShare of frames that are the one before once more
 * @param deadPixels stuck
 * @param flickeringPixels jumping between two levels
 */
public record CameraSettings(
    int width,
    int height,
    double framesPerSecond,
    double noiseKelvin,
    double fixedPatternKelvin,
    double rowNoiseKelvin,
    double columnNoiseKelvin,
    double driftKelvin,
    double lagSeconds,
    double smoothingWeight,
    double shutterEverySeconds,
    double shutterSeconds,
    double warmUpKelvin,
    double warmUpSeconds,
    double latencySeconds,
    double lateSeconds,
    double lateShare,
    double droppedShare,
    double repeatedShare,
    int deadPixels,
    int flickeringPixels) {
  /** 256 x 192 at 25 Hz with 50 mK, as a decent uncooled camera has it, without own smoothing. */
  public static CameraSettings decent() {
    return new CameraSettings(
        256, 192, 25, 0.050, 0.15, 0.010, 0.020, 0.040, 0.010, 1, 0, 0.5, 0.2, 9, 0.040, 0.030,
        0.01, 0.001, 0, 3, 3);
  }

  /** Nothing but the picture: for checks against closed forms. */
  public static CameraSettings ideal(int width, int height, double framesPerSecond) {
    return new CameraSettings(
        width, height, framesPerSecond, 0, 0, 0, 0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0, 0, 0, 0, 0);
  }

  /**
   * Small and slow with strong smoothing of its own (weight 0.113 a frame near 9 Hz), a shutter and
   * a long warm-up: figures measured on recordings of real small uncooled cameras.
   */
  public static CameraSettings smoothing() {
    return new CameraSettings(
        160, 120, 8.77, 0.070, 0.15, 0.012, 0.025, 0.045, 0.012, 0.113, 300, 1.8, 0.7, 9, 0.150,
        0.032, 0.2, 0.002, 0, 2, 2);
  }

  public CameraSettings withSize(int newWidth, int newHeight, double newFramesPerSecond) {
    return new CameraSettings(
        newWidth,
        newHeight,
        newFramesPerSecond,
        noiseKelvin,
        fixedPatternKelvin,
        rowNoiseKelvin,
        columnNoiseKelvin,
        driftKelvin,
        lagSeconds,
        smoothingWeight,
        shutterEverySeconds,
        shutterSeconds,
        warmUpKelvin,
        warmUpSeconds,
        latencySeconds,
        lateSeconds,
        lateShare,
        droppedShare,
        repeatedShare,
        deadPixels,
        flickeringPixels);
  }

  public CameraSettings withNoiseKelvin(double kelvin) {
    return new CameraSettings(
        width,
        height,
        framesPerSecond,
        kelvin,
        fixedPatternKelvin,
        rowNoiseKelvin,
        columnNoiseKelvin,
        driftKelvin,
        lagSeconds,
        smoothingWeight,
        shutterEverySeconds,
        shutterSeconds,
        warmUpKelvin,
        warmUpSeconds,
        latencySeconds,
        lateSeconds,
        lateShare,
        droppedShare,
        repeatedShare,
        deadPixels,
        flickeringPixels);
  }

  public CameraSettings withShutterEverySeconds(double seconds) {
    return new CameraSettings(
        width,
        height,
        framesPerSecond,
        noiseKelvin,
        fixedPatternKelvin,
        rowNoiseKelvin,
        columnNoiseKelvin,
        driftKelvin,
        lagSeconds,
        smoothingWeight,
        seconds,
        shutterSeconds,
        warmUpKelvin,
        warmUpSeconds,
        latencySeconds,
        lateSeconds,
        lateShare,
        droppedShare,
        repeatedShare,
        deadPixels,
        flickeringPixels);
  }
}
