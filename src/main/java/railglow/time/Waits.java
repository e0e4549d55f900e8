package railglow.time;

import java.util.concurrent.locks.LockSupport;

/** Waiting for its own sake. */
public final class Waits {
  private Waits() {}

  /** Waits for a time. An interrupt does not shorten it and stays pending. Thread-safe. */
  public static void nanos(long nanos) {
    long until = System.nanoTime() + nanos;
    boolean interrupted = false;
    for (long left = nanos; left > 0; left = until - System.nanoTime()) {
      LockSupport.parkNanos(left);
      interrupted |= Thread.interrupted();
    }
    if (interrupted) {
      Thread.currentThread().interrupt();
    }
  }
}
