package railglow.run.ladder;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import railglow.observed.Edge;
import railglow.observed.Regulation;
import railglow.observed.SupplyReading;
import railglow.safety.OutputPermit;
import railglow.safety.PermitSlot;
import railglow.safety.StopCause;
import railglow.safety.StopLatch;
import railglow.time.Step;

/** Stepped by hand with invented times; the supply is a formula. */
class LadderStepperTest {
  private static final long MS = 1_000_000L;
  private static final LadderPlan PLAN =
      new LadderPlan(List.of(0.1, 0.2, 0.3, 0.4, 0.5, 0.6), 0.2, 0.5);

  private final PermitSlot permits = new PermitSlot();
  private final StopLatch latch = new StopLatch();
  private final LadderStepper stepper =
      new LadderStepper(PLAN, 0.5, ReadBack.USUAL, permits, latch, () -> {}, entry -> {});

  /** Runs until the stepper finishes or the time is up; a reading every 50 ms. */
  private long run(DoubleUnaryOperator amperesAt, double limit, long untilMs) {
    int edge = -1;
    for (long ms = 0; ms <= untilMs; ms += 10) {
      if (stepper.step(ms * MS) == Step.FINISHED) {
        return ms;
      }
      OutputPermit permit = permits.get();
      if (permit.on() && permit.edgeIndex() != edge) {
        edge = permit.edgeIndex();
        stepper.onEdge(new Edge(edge, true, permit.levelVolts(), ms * MS, (ms + 5) * MS));
      }
      if (!permit.on() && edge >= 0) {
        stepper.onEdge(new Edge(-1, false, 0, ms * MS, ms * MS));
        edge = -1;
      }
      if (ms % 50 == 0 && permit.on()) {
        double amperes = Math.min(limit, amperesAt.applyAsDouble(permit.levelVolts()));
        stepper.onReading(
            new SupplyReading(
                ms * MS,
                (ms + 2) * MS,
                permit.levelVolts(),
                amperes,
                true,
                amperes == limit ? Regulation.CONSTANT_CURRENT : Regulation.CONSTANT_VOLTAGE,
                Set.of()));
      }
    }
    return -1;
  }

  @Test
  void everyLevelIsHeldAndTheLeadsAreTakenOff() {
    long ended = run(volts -> volts / 5, 10, 10_000);
    assertTrue(ended >= 3000 && ended < 3300, "ended after " + ended + " ms");
    assertEquals(6, stepper.steps().size());
    assertEquals(0.6 - 0.5 * 0.12, stepper.steps().get(5).volts(), 1e-12);
    assertEquals(0.12, stepper.steps().get(5).amperes(), 1e-12);
    assertEquals(StopCause.PROGRAMME_FINISHED, latch.stop().orElseThrow().cause());
    assertFalse(permits.get().on());
  }

  @Test
  void theFirstStepThatDepartsEndsItAtOnce() {
    run(volts -> volts > 0.45 ? volts * 0.8 : volts / 20, 10, 10_000);
    assertEquals(5, stepper.steps().size());
    assertTrue(stepper.departure().contains("breaks down"), stepper.departure());
    assertEquals(StopCause.SURE_ENOUGH, latch.stop().orElseThrow().cause());
    assertFalse(permits.get().on());
  }

  @Test
  void aSupplyAtItsLimitEndsIt() {
    run(volts -> volts / 0.5, 0.5, 10_000);
    assertEquals(3, stepper.steps().size());
    assertTrue(stepper.steps().get(2).supplyLimits());
  }

  @Test
  void aStopFromOutsideEndsItInItsNextStep() {
    run(volts -> volts / 5, 10, 700);
    latch.set(StopCause.OPERATOR_REQUEST, 700 * MS, "asked");
    assertEquals(Step.FINISHED, stepper.step(710 * MS));
    assertFalse(permits.get().on());
    assertEquals(1, stepper.steps().size());
  }

  @Test
  void aLevelWithoutReadingsIsNotHeldForEver() {
    stepper.step(0);
    for (long ms = 10; ms < 5000; ms += 10) {
      if (stepper.step(ms * MS) == Step.FINISHED) {
        assertEquals(StopCause.READINGS_STALE, latch.stop().orElseThrow().cause());
        assertTrue(ms <= 2510);
        return;
      }
    }
    throw new AssertionError("it was held on");
  }
}
