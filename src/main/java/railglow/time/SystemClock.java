package railglow.time;

/** The machine's own monotonic clock. Thread-safe. */
public final class SystemClock implements MonotonicClock {
  public static final SystemClock INSTANCE = new SystemClock();

  private SystemClock() {}

  @Override
  public long nanos() {
    return System.nanoTime();
  }
}
