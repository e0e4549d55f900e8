package railglow.camera.alignment;

/**
 * A camera's measured delay. Errors are standard errors; those of latency and delay hold the
 * uncertainty of the edges too.
 *
 * @param latencySeconds from mid-exposure to arrival, with the supply's own rise: edges are timed
 *     at its switch, so that this is what labels need
 * @param latencyErrorSeconds its standard error
 * @param timeConstantSeconds first-order lag of the detector
 * @param timeConstantErrorSeconds its standard error; 0 when it could not be fitted and was taken
 *     as given
 * @param timeConstantIsSeen whether the frames tell it at all; when they do and its error is 0,
 *     they agree with what was given
 * @param delaySeconds latency and time constant together: how late a steady rise is seen; known
 *     better than its parts
 * @param delayErrorSeconds its standard error
 * @param riseKelvin of the resistor within a pulse, in the unit of the values
 * @param noise left in one frame's value, in the same unit
 * @param pulses that took part
 * @param frames that took part
 */
public record Alignment(
    double latencySeconds,
    double latencyErrorSeconds,
    double timeConstantSeconds,
    double timeConstantErrorSeconds,
    boolean timeConstantIsSeen,
    double delaySeconds,
    double delayErrorSeconds,
    double riseKelvin,
    double noise,
    int pulses,
    int frames) {
  Alignment seeingTheTimeConstant(boolean seen) {
    return new Alignment(
        latencySeconds,
        latencyErrorSeconds,
        timeConstantSeconds,
        timeConstantErrorSeconds,
        seen,
        delaySeconds,
        delayErrorSeconds,
        riseKelvin,
        noise,
        pulses,
        frames);
  }
}
