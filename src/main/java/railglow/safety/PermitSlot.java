package railglow.safety;

import java.util.concurrent.atomic.AtomicReference;

/**
 * Where the conductor posts the current permit and the keeper reads it. A permit to be on that has
 * lapsed can't be brought back by a late renewal: it stays for the keeper to find. Thread-safe.
 */
public final class PermitSlot {
  private final AtomicReference<OutputPermit> current = new AtomicReference<>(OutputPermit.OFF);

  public OutputPermit get() {
    return current.get();
  }

  /** Posts a permit whatever stands there; for the first permit and for {@code OFF}. */
  public void post(OutputPermit permit) {
    current.set(permit);
  }

  /**
   * Posts a permit unless the one that stands there has lapsed.
   *
   * @return whether it was posted
   */
  public boolean post(OutputPermit permit, long nowNanos) {
    while (true) {
      OutputPermit standing = current.get();
      if (standing.isLapsed(nowNanos)) {
        return false;
      }
      if (current.compareAndSet(standing, permit)) {
        return true;
      }
    }
  }
}
