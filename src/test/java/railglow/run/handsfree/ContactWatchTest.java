package railglow.run.handsfree;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Set;
import org.junit.jupiter.api.Test;
import railglow.observed.Regulation;
import railglow.observed.SupplyReading;
import railglow.safety.StopCause;
import railglow.safety.StopLatch;

class ContactWatchTest {
  private static final long STEP = 80_000_000L;
  private final StopLatch latch = new StopLatch();
  private final ContactWatch watch =
      new ContactWatch(ContactBounds.usual(0.005, 0.002, 0.12), latch);
  private long nanos;

  @Test
  void aHeldContactIsWatchedThroughManyHalves() {
    for (int half = 0; half < 10; half++) {
      read(half % 2 == 1, half % 2 == 1 ? 0.14 : 0, Regulation.CONSTANT_VOLTAGE, 8);
    }
    assertFalse(latch.isSet());
    assertEquals(1 / 0.14 - 0.12, watch.lowestOhms(), 1e-9);
  }

  @Test
  void aLossInAHalfEndsTheRunAtItsFirstReading() {
    read(false, 0, Regulation.NONE, 1);
    read(true, 0.14, Regulation.CONSTANT_VOLTAGE, 5);
    read(true, 0.0004, Regulation.CONSTANT_VOLTAGE, 1);
    assertTrue(watch.contactLost());
    assertEquals(0.14, watch.meanAmperes(), 1e-12); // the lost reading is no part of it
    assertEquals(1 - 0.14 * 0.12, watch.meanVolts(), 1e-12);
    assertEquals(StopCause.OPERATOR_REQUEST, latch.stop().orElseThrow().cause());
    assertTrue(latch.stop().orElseThrow().evidence().contains("the contact is lost: 0.40 mA"));
  }

  @Test
  void aReadingAcrossTheLiftIsNoSwingOfTheContact() {
    read(false, 0, Regulation.NONE, 1);
    read(true, 0.14, Regulation.CONSTANT_VOLTAGE, 4);
    read(true, 0.07, Regulation.CONSTANT_VOLTAGE, 1);
    read(true, 0.0004, Regulation.CONSTANT_VOLTAGE, 1);
    assertTrue(watch.contactLost());
    assertEquals(1 / 0.14 - 0.12, watch.highestOhms(), 1e-9);
    assertEquals(0.14, watch.meanAmperes(), 1e-12);
  }

  @Test
  void aSwingBeforeTheEndOfAHalfCounts() {
    read(false, 0, Regulation.NONE, 1);
    read(true, 0.14, Regulation.CONSTANT_VOLTAGE, 4);
    read(true, 0.07, Regulation.CONSTANT_VOLTAGE, 1);
    read(false, 0, Regulation.NONE, 1);
    assertEquals(1 / 0.07 - 0.12, watch.highestOhms(), 1e-9);
  }

  @Test
  void aLiftDuringTheOffHalfIsSeenWhenTheNextOneGivesNoCurrent() {
    read(false, 0, Regulation.NONE, 1);
    read(true, 2.5, Regulation.CONSTANT_CURRENT, 5);
    read(false, 0, Regulation.NONE, 5);
    read(true, 0, Regulation.CONSTANT_VOLTAGE, 3);
    assertTrue(watch.contactLost());
  }

  @Test
  void aSupplyThatRisesSlowlyIsNoLostContact() {
    read(false, 0, Regulation.NONE, 1);
    read(true, 0, Regulation.CONSTANT_VOLTAGE, 2);
    read(true, 0.14, Regulation.CONSTANT_VOLTAGE, 2);
    assertFalse(latch.isSet());
  }

  @Test
  void anEarlierStopKeepsItsPlace() {
    read(false, 0, Regulation.NONE, 1);
    read(true, 0.14, Regulation.CONSTANT_VOLTAGE, 3);
    latch.set(StopCause.CURRENT_ABOVE_LIMIT, nanos, "first");
    read(true, 0, Regulation.CONSTANT_VOLTAGE, 1);
    assertFalse(watch.contactLost());
  }

  private void read(boolean on, double amperes, Regulation regulation, int times) {
    for (int i = 0; i < times; i++) {
      long start = nanos;
      nanos += STEP;
      watch.onReading(
          new SupplyReading(start, nanos, on ? 1 : 0, amperes, on, regulation, Set.of()));
    }
  }
}
