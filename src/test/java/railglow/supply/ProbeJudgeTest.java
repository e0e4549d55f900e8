package railglow.supply;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import railglow.observed.Regulation;
import railglow.observed.SupplyReading;
import railglow.safety.Envelope;
import railglow.safety.StopCause;

/** A supply at 50 mV and 20 mA under a probe that makes and breaks contact. */
class ProbeJudgeTest {
  private static final long TENTH = 100_000_000L;
  private static final Envelope ENVELOPE = Envelope.OPEN.withMaxVolts(2.6, "test");
  private final ReadingJudge judge =
      new ProbeJudge(ENVELOPE, Descriptors.simulated().channel(1), 150_000_000L);
  private final Commanded commanded =
      new Commanded(true, 0.05, 0.02, 0, Regulation.CONSTANT_VOLTAGE, Double.NaN);
  private long nanos = 1_000_000_000L;

  @Test
  void aChangeFromHeldVoltageToHeldCurrentIsATouchAndNoBreach() {
    assertTrue(judged(0.003, 0.02, Regulation.CONSTANT_CURRENT).isEmpty());
    assertTrue(judged(0.05, 0.0, Regulation.CONSTANT_VOLTAGE).isEmpty());
  }

  @Test
  void thatSameChangeIsABreachForAFixedLoad() {
    ReadingJudge fixed =
        new ReadingJudge(ENVELOPE, Descriptors.simulated().channel(1), 150_000_000L);
    SupplyReading reading = reading(0.003, 0.02, Regulation.CONSTANT_CURRENT);
    assertEquals(
        StopCause.UNEXPECTED_REGULATION,
        fixed.judge(reading, commanded, 0, reading.endNanos()).orElseThrow().cause());
  }

  @Test
  void currentAndVoltageAboveTheSensingLevelAreBreachesAtOnce() {
    assertEquals(
        StopCause.CURRENT_ABOVE_LIMIT,
        judged(0.05, 0.03, Regulation.CONSTANT_CURRENT).orElseThrow().cause());
    assertEquals(
        StopCause.VOLTAGE_ABOVE_LIMIT,
        judged(0.12, 0.001, Regulation.CONSTANT_VOLTAGE).orElseThrow().cause());
  }

  @Test
  void anOutputThatHoldsNeitherIsABreachAfterASecondAndNotBefore() {
    int readings = 0;
    Optional<Breach> breach = Optional.empty();
    while (breach.isEmpty()) {
      breach = judged(0.0, 0.0, Regulation.CONSTANT_VOLTAGE);
      readings++;
      assertTrue(readings < 50, "never a breach");
    }
    assertEquals(StopCause.OUTPUT_NOT_AS_COMMANDED, breach.orElseThrow().cause());
    assertEquals(10, readings);
  }

  @Test
  void oneGoodReadingBeginsTheSecondAnew() {
    for (int i = 0; i < 40; i++) {
      double volts = i % 5 == 0 ? 0.05 : 0;
      assertTrue(judged(volts, 0.0, Regulation.CONSTANT_VOLTAGE).isEmpty(), "reading " + i);
    }
  }

  @Test
  void aProbedPlanIsOnlyMadeAtAHarmlessLevel() {
    SupplyDescriptor supply = Descriptors.simulated();
    assertTrue(OutputPlan.probing(0.1, 0.1, supply).probed());
    assertThrows(IllegalArgumentException.class, () -> OutputPlan.probing(0.11, 0.02, supply));
    assertThrows(IllegalArgumentException.class, () -> OutputPlan.probing(0.05, 0.11, supply));
    assertTrue(!OutputPlan.of(0.05, 0.02, supply).probed());
  }

  private Optional<Breach> judged(double volts, double amperes, Regulation regulation) {
    SupplyReading reading = reading(volts, amperes, regulation);
    return judge.judge(reading, commanded, 0, reading.endNanos());
  }

  private SupplyReading reading(double volts, double amperes, Regulation regulation) {
    long start = nanos;
    nanos += TENTH;
    return new SupplyReading(start, nanos, volts, amperes, true, regulation, Set.of());
  }
}
