package railglow.camera;

import java.util.Optional;

/**
 * What a camera tells beside the picture.
 *
 * @param counter counts frames, if there is such a field
 * @param counterStep by how much the counter grows from one frame to the next; usually 1
 * @param time of the camera's own clock, if there is such a field
 * @param timeTickSeconds what one step of that time is worth; NaN without one
 * @param marker bytes that stand in every frame at a fixed place, if any: how a lost place in the
 *     stream is noticed and found again
 */
public record Telemetry(
    Optional<TelemetryField> counter,
    int counterStep,
    Optional<TelemetryField> time,
    double timeTickSeconds,
    Optional<FrameMarker> marker) {
  public static final Telemetry NONE =
      new Telemetry(Optional.empty(), 1, Optional.empty(), Double.NaN, Optional.empty());

  public Telemetry {
    if (counterStep < 1) {
      throw new IllegalArgumentException("a frame counter that does not grow");
    }
    if (time.isPresent() != timeTickSeconds > 0) {
      throw new IllegalArgumentException("a camera time needs the length of its tick");
    }
  }

  /** The bytes a frame must have at least to hold all of this. */
  int neededBytes() {
    int counterEnd = counter.map(TelemetryField::endBytes).orElse(0);
    int timeEnd = time.map(TelemetryField::endBytes).orElse(0);
    int markerEnd = marker.map(FrameMarker::endBytes).orElse(0);
    return Math.max(markerEnd, Math.max(counterEnd, timeEnd));
  }
}
