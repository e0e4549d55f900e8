package railglow.camera.alignment;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import railglow.observed.Edge;
import railglow.observed.Regulation;
import railglow.observed.SupplyReading;

class SupplyRiseTest {
  private static final long MILLI = 1_000_000;

  @Test
  void aSupplyThatIsThereAtItsFirstReadingsRoseWithinTheirTime() {
    SupplyRise rise = seen(0.0005, 3, 5, 45);
    assertEquals(0, rise.leastSeconds());
    assertEquals(0.005, rise.mostSeconds(), 1e-9);
  }

  @Test
  void aSlowSupplyIsBoundedFromBothSides() {
    // First order of 20 ms in voltage: the power misses 1.5 time constants going up, half going
    // down; 20 ms together in the mean.
    SupplyRise rise = seen(0.020, 3, 5, 8);
    assertTrue(rise.leastSeconds() > 0.010, rise.toString());
    assertTrue(rise.leastSeconds() <= 0.020, rise.toString());
    assertTrue(rise.mostSeconds() >= 0.020, rise.toString());
    assertTrue(rise.mostSeconds() < 0.032, rise.toString());
  }

  @Test
  void theEdgeThatWasReadSoonestBoundsBest() {
    List<Edge> edges = new ArrayList<>();
    List<SupplyReading> readings = new ArrayList<>();
    for (int k = 0; k < 4; k++) {
      long commanded = 1000 * MILLI * k;
      boolean on = k % 2 == 0;
      edges.add(new Edge(k, on, 1, commanded, commanded + 3 * MILLI));
      readings.add(reading(commanded + (k < 2 ? 20 : 4) * MILLI, 2 * MILLI, on ? 1 : 0));
    }
    assertEquals(0.006, SupplyRise.of(edges, readings).mostSeconds(), 1e-9);
  }

  @Test
  void withoutReadingsNothingIsKnown() {
    Edge edge = new Edge(0, true, 1, 0, 3 * MILLI);
    assertEquals(SupplyRise.UNKNOWN, SupplyRise.of(List.of(edge), List.of()));
    assertEquals(SupplyRise.UNKNOWN, SupplyRise.of(List.of(), List.of()));
  }

  /** Reads a supply of first order after edges a second apart. */
  private static SupplyRise seen(double tauSeconds, int firstMillis, int endMillis, int every) {
    List<Edge> edges = new ArrayList<>();
    List<SupplyReading> readings = new ArrayList<>();
    for (int k = 0; k < 8; k++) {
      long commanded = 1000 * MILLI * k;
      boolean on = k % 2 == 0;
      edges.add(new Edge(k, on, 1, commanded, commanded + firstMillis * MILLI));
      for (int at = firstMillis; at < 900; at += every) {
        double middle = (at + (endMillis - firstMillis) / 2.0) * 1e-3;
        double left = Math.exp(-middle / tauSeconds);
        long length = (endMillis - firstMillis) * MILLI;
        readings.add(reading(commanded + at * MILLI, length, on ? 1 - left : left));
      }
    }
    return SupplyRise.of(edges, readings);
  }

  private static SupplyReading reading(long startNanos, long lengthNanos, double volts) {
    return new SupplyReading(
        startNanos,
        startNanos + lengthNanos,
        volts,
        volts / 10,
        true,
        Regulation.CONSTANT_VOLTAGE,
        Set.of());
  }
}
