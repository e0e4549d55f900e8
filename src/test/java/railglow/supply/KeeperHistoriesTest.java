package railglow.supply;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;

/** The keeper's promises over many random lives, and a check that breaking one would be seen. */
class KeeperHistoriesTest {
  private static final int HISTORIES = 100_000;
  private static final List<String> ROWS = new ArrayList<>();

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
    ROWS.add("| random lives, no promise broken | " + HISTORIES + " |");
    ROWS.add("| of them with the output switched on | " + withOn + " |");
    ROWS.add("| exchanges checked | " + exchanges + " |");
  }

  @AfterAll
  static void writeTable() throws IOException {
    FaultTable.write("histories", ROWS);
  }

  @Test
  void withoutTheCheckAfterTheOnExchangeAHistoryBreaksAPromise() {
    for (long seed = 0; seed < HISTORIES; seed++) {
      Optional<String> violation = new KeeperHistory(seed, true).violation();
      if (violation.isPresent()
          && violation.get().startsWith("the first exchange after the stop")) {
        ROWS.add("| lives until the missing check after ON was noticed | " + (seed + 1) + " |");
        return;
      }
    }
    throw new AssertionError("no history noticed that the check after the ON exchange is gone");
  }
}
