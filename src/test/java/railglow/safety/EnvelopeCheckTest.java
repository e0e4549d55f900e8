package railglow.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import railglow.pulse.PulseSequence;
import railglow.pulse.Timeline;
import railglow.units.Interval;

class EnvelopeCheckTest {
  private static final SupplyFacts SUPPLY =
      new SupplyFacts(
          "supply of the test",
          new Interval(0, 30),
          new Interval(0.001, 3),
          0.001,
          0.001,
          90,
          Set.of(Protection.SUPPLY_WATCHDOG));

  /** Ten cycles of two seconds: ten seconds on. */
  private static Timeline timeline(double volts, double amperes) {
    return Timeline.of(
        new PulseSequence("test", "test", volts, amperes, 2, 4, 10, false, 1, 1, 0.05, 80, 40));
  }

  private static String sentences(Timeline timeline, Envelope envelope, SupplyFacts supply) {
    return EnvelopeCheck.refusals(timeline, envelope, supply, Set.of()).stream()
        .map(Refusal::sentence)
        .collect(Collectors.joining("\n"));
  }

  @Test
  void theWorstCaseIsLevelTimesLimitOverAllOnTime() {
    WorstCase worst = WorstCase.of(timeline(1.5, 0.2));

    assertEquals(0.3, worst.watts(), 1e-12);
    assertEquals(10, worst.onSeconds(), 1e-9);
    assertEquals(3, worst.joules(), 1e-9);
  }

  @Test
  void everyRefusalIsListedAndNothingIsChanged() {
    Envelope envelope =
        Envelope.OPEN
            .withMaxVolts(1, "board file, rail 3V3")
            .withMaxAmperes(0.1, "bench file")
            .withMaxWatts(0.2, "bench file")
            .withMaxJoules(1, "command line");

    assertEquals(
        """
        injected voltage would be 1.5 V, but board file, rail 3V3 allows at most 1 V; lower 'level'\
         in the sequence
        current limit would be 200 mA, but bench file allows at most 100 mA; lower 'current-limit'\
         in the sequence
        worst-case power would be 300 mW, but bench file allows at most 200 mW; lower 'level' or\
         'current-limit' in the sequence
        worst-case energy would be 3 J, but command line allows at most 1 J; fewer or shorter\
         cycles, a lower level, or another limit in command line""",
        sentences(timeline(1.5, 0.2), envelope, SUPPLY));
  }

  @Test
  void exactlyAtALimitIsAllowed() {
    Envelope envelope = InjectionLimits.ofRail("3V3", 3.3, Double.NaN);

    assertEquals("", sentences(timeline(0.8 * 3.3, 0.05), envelope, SUPPLY));
    assertEquals(
        1, EnvelopeCheck.refusals(timeline(2.65, 0.05), envelope, SUPPLY, Set.of()).size());
  }

  @Test
  void whatTheSupplyCantDoIsRefusedBothWays() {
    assertTrue(
        sentences(timeline(31, 0.001), Envelope.OPEN, SUPPLY)
            .contains(
                "injected voltage would be 31 V, but supply of the test allows at most 30 V"));
    assertTrue(
        sentences(timeline(1, 0.0005), Envelope.OPEN, SUPPLY)
            .contains("current limit would be 500 uA, but supply of the test needs at least 1 mA"));
  }

  @Test
  void anEnergeticSequenceNeedsEveryProtectionOrItsAbsenceAcceptedByName() {
    SupplyFacts bare = SUPPLY.without(Protection.OVER_CURRENT_PROTECTION);
    Timeline energetic = timeline(1, 0.3);

    List<Refusal> refusals = EnvelopeCheck.refusals(energetic, Envelope.OPEN, bare, Set.of());

    assertEquals(1, refusals.size());
    assertTrue(
        refusals.get(0).sentence().contains("accepts-missing: [over-current-protection]"),
        refusals.get(0).sentence());
    assertEquals(
        List.of(),
        EnvelopeCheck.refusals(energetic, Envelope.OPEN, bare, Set.of("over-current-protection")));
  }

  @Test
  void aGentleSequenceNeedsNoSupplyProtection() {
    SupplyFacts bare = SUPPLY.without(Protection.OVER_CURRENT_PROTECTION);

    assertEquals("", sentences(timeline(1, 0.25), Envelope.OPEN, bare));
  }

  @Property(tries = 500, seed = "20261", edgeCases = EdgeCasesMode.NONE)
  void anythingAllowedStaysWithinEveryLimitAndAnythingWithinIsAllowed(
      @ForAll @IntRange(min = 1, max = 40_000) int millivolts,
      @ForAll @IntRange(min = 1, max = 4_000) int milliamperes,
      @ForAll @IntRange(min = 100, max = 40_000) int maxMillivolts,
      @ForAll @IntRange(min = 10, max = 4_000) int maxMilliamperes,
      @ForAll @IntRange(min = 10, max = 100_000) int maxMilliwatts,
      @ForAll @IntRange(min = 100, max = 1_000_000) int maxMillijoules) {
    double volts = millivolts / 1e3;
    double amperes = milliamperes / 1e3;
    double watts = volts * amperes * (1 - 1e-9);
    Envelope envelope =
        Envelope.OPEN
            .withMaxVolts(maxMillivolts / 1e3, "test")
            .withMaxAmperes(maxMilliamperes / 1e3, "test")
            .withMaxWatts(maxMilliwatts / 1e3, "test")
            .withMaxJoules(maxMillijoules / 1e3, "test");

    boolean allowed =
        EnvelopeCheck.refusals(timeline(volts, amperes), envelope, SUPPLY, Set.of()).isEmpty();

    boolean within =
        millivolts <= Math.min(maxMillivolts, 30_000)
            && milliamperes <= Math.min(maxMilliamperes, 3_000)
            && watts <= Math.min(maxMilliwatts / 1e3, 90)
            && watts * 10 <= maxMillijoules / 1e3;
    assertEquals(within, allowed);
  }
}
