package railglow.time;

import java.util.concurrent.TimeUnit;

/** A plain wait of the calling thread, for threads that are no loops. */
public final class Pause {
  private Pause() {}

  /** Waits; an interruption ends the wait and is kept. */
  public static void nanos(long nanos) {
    try {
      TimeUnit.NANOSECONDS.sleep(nanos);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
