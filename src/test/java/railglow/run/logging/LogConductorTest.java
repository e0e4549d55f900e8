package railglow.run.logging;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import railglow.safety.PermitSlot;
import railglow.safety.StopCause;
import railglow.safety.StopLatch;
import railglow.time.Step;

class LogConductorTest {
  private static final long SECOND = 1_000_000_000L;
  private final PermitSlot permits = new PermitSlot();
  private final StopLatch latch = new StopLatch();

  private LogConductor conductor(double volts, double seconds, double wait, boolean waits) {
    Optional<Condition> start =
        waits ? Optional.of(Condition.parse("current step 1 A", List.of())) : Optional.empty();
    return new LogConductor(
        new LogPlan(volts, 2, seconds, wait, 1, start, Optional.empty(), List.of(), List.of()),
        10 * SECOND,
        permits,
        latch,
        () -> {});
  }

  @Test
  void theOutputIsOffInTheLeadInAndOnUntilTheTimeIsOver() {
    LogConductor conductor = conductor(1.2, 5, 0, false);
    assertEquals(10 * SECOND + SECOND / 10, conductor.step(10 * SECOND));
    assertFalse(permits.get().on());
    conductor.step(12 * SECOND);
    assertTrue(permits.get().on());
    assertEquals(1.2, permits.get().levelVolts());
    assertTrue(permits.get().expiresNanos() <= 12 * SECOND + SECOND / 2, "it must be renewed");
    assertFalse(latch.isSet());
    assertEquals(Step.FINISHED, conductor.step(17 * SECOND));
    assertFalse(permits.get().on());
    assertEquals(StopCause.PROGRAMME_FINISHED, latch.stop().orElseThrow().cause());
    assertEquals("the time was over, 5.0 s", latch.stop().orElseThrow().evidence());
  }

  @Test
  void withoutALevelNoPermitIsEverPosted() {
    LogConductor conductor = conductor(Double.NaN, Double.POSITIVE_INFINITY, 0, false);
    for (int second = 10; second < 10_000; second += 100) {
      conductor.step(second * SECOND);
      assertFalse(permits.get().on());
    }
    assertFalse(latch.isSet(), "it ends only when stopped");
  }

  @Test
  void theTimeCountsFromTheStartConditionAndTheWaitHasAnEnd() {
    LogConductor conductor = conductor(Double.NaN, 3, 60, true);
    conductor.step(50 * SECOND);
    assertFalse(latch.isSet());
    conductor.begun(51 * SECOND);
    conductor.step(53 * SECOND);
    assertFalse(latch.isSet());
    conductor.step(54 * SECOND);
    assertEquals("the time was over, 3.0 s", latch.stop().orElseThrow().evidence());
  }

  @Test
  void aStartConditionThatNeverComesEndsTheLog() {
    conductor(Double.NaN, 3, 60, true).step(72 * SECOND);
    assertEquals("the start condition did not come, 60.0 s", latch.stop().orElseThrow().evidence());
  }

  @Test
  void aLatchedStopWithdrawsThePermit() {
    LogConductor conductor = conductor(1.2, 500, 0, false);
    conductor.step(13 * SECOND);
    latch.set(StopCause.OPERATOR_REQUEST, 14 * SECOND, "signal INT");
    assertEquals(Step.FINISHED, conductor.step(14 * SECOND));
    assertFalse(permits.get().on());
  }
}
