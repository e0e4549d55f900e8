package railglow.supply;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import railglow.supply.CompanionWatch.Ending;
import railglow.supply.FakeSupply.Fate;
import railglow.time.InventedClock;
import railglow.time.Step;

class CompanionWatchTest {
  private static final long LIMIT_NANOS = 1_000_000_000;
  private static final long PATIENCE_NANOS = 10_000_000_000L;
  private final InventedClock clock = new InventedClock(5);
  private final FakeSupply supply = new FakeSupply(Descriptors.simulated(), clock, 1);
  private final List<Integer> answers = new ArrayList<>();
  private final List<String> told = new ArrayList<>();
  private int killed;
  private final CompanionWatch watch =
      new CompanionWatch(
          supply, LIMIT_NANOS, PATIENCE_NANOS, clock, answers::add, () -> killed++, told::add);

  @BeforeEach
  void outputOn() {
    supply.volts = 1;
    supply.force(true);
  }

  private boolean run(double seconds) {
    long end = clock.nanos() + Math.round(seconds * 1e9);
    long next = clock.nanos();
    while (next < end) {
      clock.advanceTo(next);
      next = watch.step(clock.nanos());
      if (next == Step.FINISHED) {
        return true;
      }
    }
    clock.advanceTo(end);
    return false;
  }

  @Test
  void whileBeatsComeTheSupplyIsNotTouched() {
    for (int i = 0; i < 100; i++) {
      watch.heard(CompanionTalk.BEAT);
      assertFalse(run(0.9));
    }

    assertEquals(List.of(), supply.exchanges);
    assertTrue(answers.stream().allMatch(code -> code == CompanionTalk.HEARD));
  }

  @Test
  void aGoodbyeEndsItWithoutTouchingTheSupply() {
    watch.heard(CompanionTalk.GOODBYE);

    assertTrue(run(1));
    assertEquals(Ending.GOODBYE, watch.ending());
    assertEquals(List.of(), supply.exchanges);
  }

  @Test
  void aClosedPipeDrivesOffAtOnceAndEndsWhenProven() {
    watch.heard(-1);

    assertTrue(run(0.5));

    assertEquals(Ending.PROVEN_OFF, watch.ending());
    assertEquals("off", supply.exchanges.get(0));
    assertFalse(supply.isTrulyOn());
    assertEquals(List.of(CompanionTalk.ACTING, CompanionTalk.PROVEN), answers);
    assertEquals(
        List.of("Companion  the program ended without a goodbye; output proven off"), told);
  }

  @Test
  void missingBeatsDriveOffAndKeepOffWhileTheControllerLives() {
    watch.heard(CompanionTalk.BEAT);
    run(1.2);
    assertFalse(supply.isTrulyOn());

    supply.force(true);
    run(0.3);

    assertFalse(supply.isTrulyOn(), "a controller that woke up must not win");
    assertEquals(0, killed, "the way was free, nobody had to be ended");
    assertEquals(List.of(), told, "a program that lives speaks for itself");
  }

  @Test
  void aSilentControllerThatHoldsTheOnlyWayIsEndedOnce() {
    supply.interference = exchange -> killed > 0 ? Fate.NORMAL : Fate.LOST_BEFORE;

    run(20);

    watch.heard(-1);
    run(1);

    assertEquals(1, killed);
    assertFalse(supply.isTrulyOn());
    assertTrue(
        told.get(told.size() - 1).contains("stood still, holding the line, and was ended; output"),
        told.toString());
  }

  @Test
  void withoutAProofItGoesOnUntilItsPatienceEndsAndSaysSo() {
    supply.ignoresOff = true;
    watch.heard(-1);

    assertFalse(run(9));
    assertTrue(run(5));

    assertEquals(Ending.NOT_PROVEN, watch.ending());
    assertTrue(supply.exchanges.stream().filter("off"::equals).count() > 50);
    assertEquals(2, told.size(), "an alarm after two seconds and one at the end: " + told);
    assertTrue(told.get(0).contains("OUTPUT NOT PROVEN OFF (still trying): "), told.get(0));
    assertTrue(told.get(1).contains("OUTPUT NOT PROVEN OFF (given up): "), told.get(1));
    assertTrue(told.get(1).contains("by hand, or pull the leads, NOW"), told.get(1));
  }
}
