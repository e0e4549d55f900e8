package railglow.sim.wire;

/** Switches the outputs off when nothing was heard for a time, if enabled. Not thread-safe. */
final class OutputWatchdog {
  private boolean enabled;
  private double delaySeconds = 60;
  private long lastHeardNanos;

  boolean isEnabled() {
    return enabled;
  }

  double delaySeconds() {
    return delaySeconds;
  }

  void setDelaySeconds(double seconds) {
    delaySeconds = seconds;
  }

  void enable(long nowNanos) {
    enabled = true;
    lastHeardNanos = nowNanos;
  }

  void disable() {
    enabled = false;
  }

  void fed(long nowNanos) {
    lastHeardNanos = nowNanos;
  }

  long expiryNanos() {
    return lastHeardNanos + Math.round(delaySeconds * 1e9);
  }

  boolean expiredBy(long nowNanos) {
    return enabled && nowNanos - expiryNanos() >= 0;
  }
}
