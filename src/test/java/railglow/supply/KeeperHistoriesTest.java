package railglow.supply;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;

/** The keeper's promises over many random lives, and a check that breaking one would be seen. */
class KeeperHistoriesTest {
  private static final int HISTORIES = 100_000;

  @Test
  void noHistoryBreaksAnyPromise() {
    long exchanges = 0;
    int withOn = 0;
    for (long seed = 0; seed < HISTORIES; seed++) {
      KeeperHistory history = new KeeperHistory(seed, false);
      Optional<String> violation = history.violation();
      assertEquals(Optional.empty(), violation, "history " + seed);
      exchanges += history.exchanges;
      withOn += history.switchedOn ? 1 : 0;
    }
    // A test of lives in which nothing happens would prove nothing.
    assertTrue(exchanges > 15L * HISTORIES, exchanges + " exchanges");
    assertTrue(withOn > HISTORIES / 5, withOn + " histories switched on");
  }

  @Test
  void withoutTheCheckAfterTheOnExchangeAHistoryBreaksAPromise() {
    for (long seed = 0; seed < HISTORIES; seed++) {
      Optional<String> violation = new KeeperHistory(seed, true).violation();
      if (violation.isPresent()
          && violation.get().startsWith("the first exchange after the stop")) {
        return;
      }
    }
    throw new AssertionError("no history noticed that the check after the ON exchange is gone");
  }
}
