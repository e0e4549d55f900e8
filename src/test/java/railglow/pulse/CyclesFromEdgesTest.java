package railglow.pulse;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.junit.jupiter.api.Test;

class CyclesFromEdgesTest {
  @Test
  void eachPulseTakesHalfOfTheOffTimeOnEitherSide() {
    List<CycleWindow> cycles =
        CyclesFromEdges.of(new long[] {100, 300, 560}, new long[] {200, 400, 660});
    assertEquals(new CycleWindow(0, 50, 100, 150, 200, 250), cycles.get(0));
    assertEquals(new CycleWindow(1, 250, 300, 350, 400, 480), cycles.get(1));
    assertEquals(new CycleWindow(2, 480, 560, 610, 660, 710), cycles.get(2));
  }

  @Test
  void thePeriodIsTheMiddleOneOfTheDistances() {
    long second = 1_000_000_000L;
    List<CycleWindow> even =
        CyclesFromEdges.of(
            new long[] {0, 4 * second, 9 * second, 13 * second},
            new long[] {second, 5 * second, 10 * second, 14 * second});
    assertEquals(4, CyclesFromEdges.periodSeconds(even), 1e-12);
    assertEquals(2, CyclesFromEdges.periodSeconds(even.subList(0, 1)), 1e-12);
  }

  @Test
  void aPulseThatIsOutOfOrderIsNamed() {
    IllegalArgumentException e =
        assertThrows(
            IllegalArgumentException.class,
            () -> CyclesFromEdges.of(new long[] {100, 150}, new long[] {200, 250}));
    assertEquals("pulse 2 is out of order", e.getMessage());
    assertThrows(
        IllegalArgumentException.class, () -> CyclesFromEdges.of(new long[] {1}, new long[0]));
  }
}
