package railglow.pulse;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class CodedTimelineTest {
  private static Timeline coded(int cycles) {
    return Timeline.of(
        new PulseSequence(
            "t", "t", 1, 0.3, 2, 4, cycles, true, 3, 1, 0.05, 70, 30, PulseOrder.CODED));
  }

  @Test
  void noOnTimeIsLongerThanHalfAPeriodAndHalfOfTheTimeIsOff() {
    long on = 0;
    List<PlannedEdge> edges = coded(40).edges();
    for (int i = 0; i + 1 < edges.size(); i += 2) {
      assertTrue(edges.get(i).on() && !edges.get(i + 1).on());
      long length = edges.get(i + 1).offsetNanos() - edges.get(i).offsetNanos();
      assertTrue(length <= 1_000_000_000L, "ON for " + length + " ns");
      on += length;
    }
    assertEquals(40 * 1_000_000_000L, on);
    assertEquals(0, edges.size() % 2, "the last change is off");
  }

  @Test
  void theCodeIsOrthogonalToWhatRepeatsWithTheCycleOrEveryOtherOne() {
    List<CycleWindow> cycles = coded(40).cycles();
    for (int k = 0; k < 40; k += 4) {
      int sum = 0;
      int alternating = 0;
      int drift = 0;
      for (int j = 0; j < 4; j++) {
        int sign = cycles.get(k + j).inverted() ? -1 : 1;
        sum += sign;
        alternating += j % 2 == 0 ? sign : -sign;
        drift += sign * j;
      }
      assertEquals(0, sum);
      assertEquals(0, alternating);
      assertEquals(0, drift);
    }
    for (int k = 0; k < 40; k += 2) {
      assertNotEquals(cycles.get(k).inverted(), cycles.get(k + 1).inverted());
    }
  }

  @Test
  void squarePulsesAreAsTheyWere() {
    PulseSequence square = new PulseSequence("t", "t", 1, 0.3, 2, 2, 3, true, 3, 1, 0.05, 70, 30);
    List<PlannedEdge> edges = Timeline.of(square).edges();
    assertEquals(6, edges.size());
    for (int k = 0; k < 3; k++) {
      assertEquals(
          new PlannedEdge(2 * k, 3_500_000_000L + k * 2_000_000_000L, true, 1), edges.get(2 * k));
      assertEquals(
          new PlannedEdge(2 * k + 1, 4_500_000_000L + k * 2_000_000_000L, false, 0),
          edges.get(2 * k + 1));
    }
  }
}
