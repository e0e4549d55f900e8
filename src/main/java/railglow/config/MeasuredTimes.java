package railglow.config;

import java.time.Instant;
import railglow.camera.alignment.Alignment;

/**
 * A camera's delay as an alignment on the bench found it. Errors are standard errors.
 *
 * @param measured when
 * @param latencySeconds from mid-exposure to arrival
 * @param latencyErrorSeconds above zero
 * @param timeConstantSeconds of the detector with the camera's own smoothing
 * @param timeConstantErrorSeconds 0 when the frames could not tell it and the descriptor's stayed
 * @param pulses that took part
 */
public record MeasuredTimes(
    Instant measured,
    double latencySeconds,
    double latencyErrorSeconds,
    double timeConstantSeconds,
    double timeConstantErrorSeconds,
    int pulses) {

  /** What an alignment gave; a latency below zero can't be and is zero within its error. */
  public static MeasuredTimes of(Alignment alignment, Instant measured) {
    return new MeasuredTimes(
        measured,
        Math.max(0, alignment.latencySeconds()),
        alignment.latencyErrorSeconds(),
        alignment.timeConstantSeconds(),
        alignment.timeConstantErrorSeconds(),
        alignment.pulses());
  }
}
