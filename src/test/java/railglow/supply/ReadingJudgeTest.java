package railglow.supply;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import railglow.observed.Regulation;
import railglow.observed.SupplyReading;
import railglow.observed.Trip;
import railglow.safety.Envelope;
import railglow.safety.StopCause;

class ReadingJudgeTest {
  private static final long SETTLE = 100_000_000;
  private static final long START = 1_000_000_000;
  private static final Envelope ENVELOPE =
      Envelope.OPEN
          .withMaxVolts(2, "bench file")
          .withMaxAmperes(0.5, "board file")
          .withMaxWatts(0.45, "bench file")
          .withMaxJoules(10, "command line")
          .withMaxReadingAgeSeconds(0.5, "bench file");
  private final ReadingJudge judge =
      new ReadingJudge(ENVELOPE, Descriptors.simulated().channel(1), SETTLE);

  private static Commanded on(Regulation expected) {
    return new Commanded(true, 1, 0.5, START - SETTLE, expected, Double.NaN);
  }

  private static Commanded off() {
    return new Commanded(false, 1, 0.5, START - SETTLE, Regulation.NOT_REPORTED, Double.NaN);
  }

  private static SupplyReading reading(double volts, double amperes) {
    return new SupplyReading(
        START, START, volts, amperes, true, Regulation.CONSTANT_VOLTAGE, Set.of());
  }

  private static SupplyReading offReading(double volts, double amperes) {
    return new SupplyReading(START, START, volts, amperes, false, Regulation.NONE, Set.of());
  }

  private Optional<StopCause> cause(SupplyReading reading, Commanded commanded) {
    return judge.judge(reading, commanded, 0, START).map(Breach::cause);
  }

  @Test
  void aReadingAsCommandedIsNoBreach() {
    assertEquals(Optional.empty(), cause(reading(1, 0.147), on(Regulation.CONSTANT_VOLTAGE)));
    assertEquals(Optional.empty(), cause(offReading(0.4, 0.001), off()));
  }

  /** SCPI-99 Vol 1, 7.2.1: infinity is 9.9E37, not-a-number 9.91E37. */
  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, 9.9e37, -9.9e37, 9.91e37, Double.POSITIVE_INFINITY, 1e38})
  void whatIsNoMeasurementIsABreach(double value) {
    assertEquals(Optional.of(StopCause.READING_NOT_A_NUMBER), cause(reading(value, 0.1), off()));
    assertEquals(Optional.of(StopCause.READING_NOT_A_NUMBER), cause(reading(1, value), off()));
  }

  @Test
  void anOldReadingIsABreach() {
    Breach breach =
        judge.judge(reading(1, 0.1), on(Regulation.NOT_REPORTED), 0, START + 600_000_000).get();

    assertEquals(StopCause.READINGS_STALE, breach.cause());
    assertEquals(
        "age of the reading 600 ms, allowed at most 500 ms (bench file)", breach.evidence());
  }

  @Test
  void currentVoltagePowerAndEnergyEachHaveTheirLimit() {
    assertEquals(
        Optional.of(StopCause.CURRENT_ABOVE_LIMIT),
        cause(reading(0.2, 0.51), on(Regulation.NOT_REPORTED)));
    assertEquals(
        Optional.of(StopCause.CURRENT_ABOVE_LIMIT),
        cause(reading(0.2, -0.51), on(Regulation.NOT_REPORTED)));
    assertEquals(
        Optional.of(StopCause.VOLTAGE_ABOVE_LIMIT),
        cause(reading(1.2, 0.1), on(Regulation.NOT_REPORTED)));
    assertEquals(
        Optional.of(StopCause.POWER_ABOVE_LIMIT),
        cause(reading(1, 0.47), on(Regulation.NOT_REPORTED)));
    Breach energy = judge.judge(reading(1, 0.1), on(Regulation.NOT_REPORTED), 10.5, START).get();
    assertEquals(StopCause.ENERGY_ABOVE_LIMIT, energy.cause());
    assertEquals("energy 10.5 J, allowed at most 10 J (command line)", energy.evidence());
  }

  @Test
  void withinTheMetersOwnErrorNothingIsKnownToBeOver() {
    assertEquals(
        Optional.empty(),
        cause(reading(0.2, 0.5025), on(Regulation.NOT_REPORTED))
            .filter(c -> c == StopCause.CURRENT_ABOVE_LIMIT));
  }

  @Test
  void aTripIsNamed() {
    SupplyReading tripped =
        new SupplyReading(
            START, START, 0, 0, false, Regulation.NONE, Set.of(Trip.OVERCURRENT, Trip.OVERVOLTAGE));

    Breach breach = judge.judge(tripped, on(Regulation.NOT_REPORTED), 0, START).get();

    assertEquals(StopCause.SUPPLY_TRIPPED, breach.cause());
    assertTrue(breach.evidence().endsWith("over-voltage and over-current"), breach.evidence());
  }

  @Test
  void aSwitchThatIsNotAsCommandedIsABreachBothWays() {
    assertEquals(Optional.of(StopCause.OUTPUT_NOT_AS_COMMANDED), cause(reading(0, 0), off()));
    assertEquals(
        Optional.of(StopCause.OUTPUT_NOT_AS_COMMANDED),
        cause(offReading(0, 0), on(Regulation.NOT_REPORTED)));
  }

  @Test
  void currentWhileOffIsABreachOnceItHadTimeToFall() {
    Commanded justNow =
        new Commanded(false, 1, 0.5, START - 1, Regulation.NOT_REPORTED, Double.NaN);

    assertEquals(Optional.of(StopCause.CURRENT_WHILE_OFF), cause(offReading(0, 0.05), off()));
    assertEquals(Optional.empty(), cause(offReading(0, 0.05), justNow));
  }

  @Test
  void aChangeOfRegulationIsABreachUnlessTheRailIsCharging() {
    SupplyReading limited =
        new SupplyReading(START, START, 0.5, 0.5, true, Regulation.CONSTANT_CURRENT, Set.of());
    Commanded charging =
        new Commanded(true, 1, 0.5, START - SETTLE, Regulation.CONSTANT_VOLTAGE, 0.45);
    Commanded standing =
        new Commanded(true, 1, 0.5, START - SETTLE, Regulation.CONSTANT_VOLTAGE, 0.51);

    assertEquals(Optional.empty(), cause(limited, charging));
    assertEquals(Optional.of(StopCause.UNEXPECTED_REGULATION), cause(limited, standing));
  }

  @Test
  void anOutputThatHoldsNeitherLevelNorLimitIsNotAsCommanded() {
    SupplyReading neither =
        new SupplyReading(START, START, 0.5, 0.1, true, Regulation.NOT_REPORTED, Set.of());

    assertEquals(
        Optional.of(StopCause.OUTPUT_NOT_AS_COMMANDED),
        cause(neither, on(Regulation.NOT_REPORTED)));
  }
}
