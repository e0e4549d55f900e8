package railglow.safety;

/**
 * The first breach or request of a run.
 *
 * @param nanos monotonic time when it was latched
 * @param evidence one sentence with the measured value and the limit
 */
public record Stop(StopCause cause, long nanos, String evidence) {}
