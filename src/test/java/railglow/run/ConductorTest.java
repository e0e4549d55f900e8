package railglow.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import railglow.pulse.PulseSequence;
import railglow.pulse.Timeline;
import railglow.safety.OutputPermit;
import railglow.safety.PermitSlot;
import railglow.safety.StopCause;
import railglow.safety.StopLatch;
import railglow.time.Step;

class ConductorTest {
  private static final long SECOND = 1_000_000_000L;
  private static final PulseSequence TWO_CYCLES =
      new PulseSequence("t", "test", 1.5, 0.3, 4.0, 1, 2, true, 3.0, 1.0, 0.05, 70, 30);
  private final PermitSlot permits = new PermitSlot();
  private final StopLatch latch = new StopLatch();
  private int wakes;
  private final Conductor conductor =
      new Conductor(Timeline.of(TWO_CYCLES), 0, permits, latch, () -> wakes++);

  @Test
  void noPermitExistsBeforeTheFirstEdge() {
    long next = conductor.step(0);
    assertEquals(OutputPermit.OFF, permits.get());
    assertTrue(next <= 4 * SECOND);
  }

  @Test
  void anEdgePostsItsPermitAndWakesTheKeeper() {
    conductor.step(4 * SECOND);
    assertTrue(permits.get().on());
    assertEquals(1.5, permits.get().levelVolts());
    assertEquals(0, permits.get().edgeIndex());
    assertEquals(1, wakes);
    for (long now = 4 * SECOND; now < 6 * SECOND; now = conductor.step(now)) {
      assertTrue(permits.get().on());
    }
    conductor.step(6 * SECOND);
    assertFalse(permits.get().on());
    assertEquals(1, permits.get().edgeIndex());
    assertEquals(2, wakes);
  }

  @Test
  void aPermitThatLapsedIsLeftForTheKeeperToFind() {
    conductor.step(4 * SECOND);
    conductor.step(5 * SECOND);
    assertTrue(permits.get().isLapsed(5 * SECOND), "the late renewal changed nothing");
  }

  @Test
  void aPermitIsRenewedLongBeforeItLapses() {
    long now = 4 * SECOND;
    for (int i = 0; i < 10; i++) {
      long next = conductor.step(now);
      assertTrue(next - now < Conductor.PERMIT_LIFE_NANOS / 2);
      assertEquals(now + Conductor.PERMIT_LIFE_NANOS, permits.get().expiresNanos());
      now = next;
    }
    assertEquals(1, wakes);
  }

  @Test
  void theWakeUpFallsOnTheEdge() {
    assertEquals(4 * SECOND, conductor.step(4 * SECOND - 1000));
  }

  @Test
  void aLateStepSkipsToTheEdgeThatHoldsNow() {
    conductor.step(9 * SECOND);
    assertEquals(2, permits.get().edgeIndex());
    assertTrue(permits.get().on());
  }

  @Test
  void theEndIsLatchedWithTheOutputOff() {
    assertEquals(Step.FINISHED, conductor.step(12 * SECOND));
    assertEquals(StopCause.PROGRAMME_FINISHED, latch.stop().orElseThrow().cause());
    assertFalse(permits.get().on());
  }

  @Test
  void afterAStopNothingIsPermitted() {
    conductor.step(4 * SECOND);
    latch.set(StopCause.OPERATOR_REQUEST, 4 * SECOND, "test");
    assertEquals(Step.FINISHED, conductor.step(4 * SECOND + 1));
    assertFalse(permits.get().on());
  }
}
