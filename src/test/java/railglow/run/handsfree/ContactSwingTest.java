package railglow.run.handsfree;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import railglow.journal.Entry;
import railglow.observed.Regulation;
import railglow.observed.SupplyReading;
import railglow.run.reduction.SwungCycles;
import railglow.safety.StopCause;
import railglow.safety.StopLatch;

/** Invented readings of a 1 V level, every 60 ms. */
class ContactSwingTest {
  private static final ContactBounds BOUNDS = ContactBounds.usual(0.005, 0.002, 0.12);
  private final ContactSwing swing = new ContactSwing(BOUNDS);
  private final List<Entry.ContactSwung> swings = new ArrayList<>();
  private long nanos;

  @Test
  void aHalfInWhichTheResistanceLeavesItsBandIsToldOnceWithItsExtremes() {
    off();
    on(7, 7, 7, 7, 7, 13, 7, 12, 7);
    assertEquals(1, swings.size());
    assertEquals(7, swings.get(0).lowestOhms(), 1e-9);
    assertEquals(13, swings.get(0).highestOhms(), 1e-9);
    off();
    on(7, 7, 7, 7, 7, 7, 7);
    assertEquals(1, swings.size(), "the next half is held");
  }

  @Test
  void aRailThatDriftsFromHalfToHalfAndANewPointOfRestSpoilNothing() {
    for (double ohms = 7; ohms < 14; ohms += 0.5) {
      off();
      on(ohms, ohms, ohms * 1.02, ohms, ohms, ohms, ohms);
    }
    assertTrue(swings.isEmpty());
  }

  @Test
  void whatIsReadWhileTheOutputRisesIsNoSwing() {
    off();
    on(0.3, 1); // within the first 120 ms
    on(7, 7, 7, 7);
    assertTrue(swings.isEmpty());
  }

  @Test
  void threeSwungCyclesInARowEndTheTouchAndOneHeldInBetweenDoesNot() {
    StopLatch latch = new StopLatch();
    ContactWatch watch = new ContactWatch(BOUNDS, latch);
    String swung = SwungCycles.CONTACT + " swung between 7 and 13 ohm";
    for (String reason : new String[] {swung, swung, "", swung, "a shutter event", swung, swung}) {
      watch.onCycle(cycle(reason));
    }
    assertFalse(latch.isSet());
    watch.onCycle(cycle(swung));
    assertEquals(StopCause.OPERATOR_REQUEST, latch.stop().orElseThrow().cause());
    assertTrue(latch.stop().orElseThrow().evidence().contains("between 7 and 13 ohm"));
    assertTrue(watch.contactUnsteady());
    assertFalse(watch.contactLost());
  }

  private static Entry.Cycle cycle(String reason) {
    return new Entry.Cycle(1, 0, reason.isEmpty(), reason, new int[4], Map.of());
  }

  private void off() {
    for (int i = 0; i < 5; i++) {
      take(false, 0, 0);
    }
  }

  private void on(double... ohms) {
    for (double value : ohms) {
      double amperes = 1 / (value + 0.12);
      take(true, 1, amperes);
    }
  }

  private void take(boolean on, double volts, double amperes) {
    long start = nanos;
    nanos += 60_000_000L;
    swing
        .take(
            new SupplyReading(
                start, start + 5_000_000L, volts, amperes, on, Regulation.NONE, Set.of()))
        .ifPresent(swings::add);
  }
}
