package railglow.config;

import java.util.Optional;
import railglow.camera.CameraDescriptor;
import railglow.thermal.PulseNoise;

/**
 * What was measured of a bench's camera and is kept beside the bench file.
 *
 * @param cameraName as in the descriptor that was used
 * @param times empty until an alignment was made
 * @param noise empty until the noise was measured
 */
public record MeasuredCamera(
    String cameraName, Optional<MeasuredTimes> times, Optional<MeasuredNoise> noise) {
  private static final double HIGHEST_CORRELATION = 0.999;

  public static MeasuredCamera nothing(String cameraName) {
    return new MeasuredCamera(cameraName, Optional.empty(), Optional.empty());
  }

  public MeasuredCamera with(MeasuredTimes newTimes) {
    return new MeasuredCamera(cameraName, Optional.of(newTimes), noise);
  }

  public MeasuredCamera with(MeasuredNoise newNoise) {
    return new MeasuredCamera(cameraName, times, Optional.of(newNoise));
  }

  /** The camera with what was measured in place of the descriptor's figures. */
  public CameraDescriptor applied(CameraDescriptor camera) {
    CameraDescriptor result = camera;
    if (times.isPresent()) {
      result = result.withTimes(times.get().latencySeconds(), times.get().timeConstantSeconds());
    }
    if (noise.isPresent() && noise.get().inKelvin()) {
      result = result.withNoise(noise.get().figures().temporal());
    }
    return result;
  }

  /**
   * The noise for a forecast at a pulse period, correlated from frame to frame and from pixel to
   * pixel, with lines that move as wholes and with drift as measured; empty in counts.
   */
  public Optional<PulseNoise> pulseNoise(double framesPerSecond, double periodSeconds) {
    return noise
        .filter(MeasuredNoise::inKelvin)
        .map(MeasuredNoise::figures)
        .filter(figures -> figures.temporal() > 0)
        .map(
            figures ->
                new PulseNoise(
                        figures.temporal(),
                        framesPerSecond,
                        Math.max(0, Math.min(HIGHEST_CORRELATION, figures.nextFrameCorrelation())),
                        1)
                    .withNeighbours(
                        bounded(figures.horizontalCorrelation()),
                        bounded(figures.verticalCorrelation()))
                    .withLines(figures.rowTogether(), figures.columnTogether())
                    .measuredAt(periodSeconds, figures.allanDeviationAt(periodSeconds / 2)));
  }

  private static double bounded(double correlation) {
    return Math.max(-HIGHEST_CORRELATION, Math.min(HIGHEST_CORRELATION, correlation));
  }
}
