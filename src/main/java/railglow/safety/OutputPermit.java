package railglow.safety;

/**
 * The right to have the output on at a level until a time.
 *
 * @param edgeIndex the place in the timeline that asked for this state; -1 before the first
 * @param on whether the output may and shall be on
 * @param levelVolts the level while on
 * @param expiresNanos monotonic time at which an unrenewed permit lapses
 */
public record OutputPermit(int edgeIndex, boolean on, double levelVolts, long expiresNanos) {
  public static final OutputPermit OFF = new OutputPermit(-1, false, 0, Long.MAX_VALUE);

  public OutputPermit renewedUntil(long newExpiresNanos) {
    return new OutputPermit(edgeIndex, on, levelVolts, newExpiresNanos);
  }

  /** Whether this permit to be on has run out. */
  public boolean isLapsed(long nowNanos) {
    return on && nowNanos - expiresNanos >= 0;
  }
}
