package railglow.time;

/**
 * A loop without its thread: time comes in, the next wake-up goes out. Run by a {@link StepRunner}
 * in production and called by hand in tests.
 */
public interface Step {
  /** Returned by {@link #step} when the loop has ended for good. */
  long FINISHED = Long.MAX_VALUE;

  /**
   * Does one bounded piece of work.
   *
   * @param nowNanos the monotonic time
   * @return when to be called next, or {@link #FINISHED}; a time not after now means at once
   */
  long step(long nowNanos);
}
