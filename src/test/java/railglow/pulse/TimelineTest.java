package railglow.pulse;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class TimelineTest {
  static final PulseSequence SEQUENCE =
      new PulseSequence("t", "test", 1.0, 0.3, 2.0, 2, 300, true, 3.0, 1.0, 0.05, 70, 30);

  @Test
  void edgesStandAtStartPlusKPeriodsNeverAtSumsOfWaits() {
    Timeline timeline = Timeline.of(SEQUENCE);
    assertEquals(600, timeline.edges().size());
    assertEquals(3_500_000_000L, timeline.edges().get(0).offsetNanos());
    assertEquals(3_500_000_000L + 299 * 2_000_000_000L, timeline.edges().get(598).offsetNanos());
    assertEquals(3_000_000_000L + 300 * 2_000_000_000L + 1_000_000_000L, timeline.endOffsetNanos());
  }

  @Test
  void aCycleIsAQuarterOffAHalfOnAQuarterOff() {
    CycleWindow cycle = Timeline.of(SEQUENCE).cycles().get(1);
    assertEquals(5_000_000_000L, cycle.startNanos());
    assertEquals(0, cycle.quarterAt(4_999_999_999L));
    assertEquals(1, cycle.quarterAt(5_000_000_000L));
    assertEquals(2, cycle.quarterAt(5_500_000_000L));
    assertEquals(3, cycle.quarterAt(6_000_000_000L));
    assertEquals(4, cycle.quarterAt(6_500_000_000L));
    assertEquals(0, cycle.quarterAt(7_000_000_000L));
  }
}
