package railglow.safety;

import java.util.concurrent.atomic.AtomicReference;

/** Where the conductor posts the current permit and the keeper reads it. Thread-safe. */
public final class PermitSlot {
  private final AtomicReference<OutputPermit> current = new AtomicReference<>(OutputPermit.OFF);

  public OutputPermit get() {
    return current.get();
  }

  public void post(OutputPermit permit) {
    current.set(permit);
  }
}
