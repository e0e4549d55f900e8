package railglow.report.draw;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class TicksTest {
  @Test
  void ticksAreRoundNumbersWithTheDigitsTheyNeed() {
    assertEquals(List.of(0.0, 0.5, 1.0), Ticks.between(0, 1.2, 3));
    assertEquals("-0.05", Ticks.text(-0.05, 0.05));
    assertEquals("0", Ticks.text(-1e-17, 1));
    assertEquals("0.0", Ticks.text(-1e-17, 0.5));
    assertEquals("200", Ticks.text(200, 100));
  }

  @Property(tries = 500, seed = "8")
  void ticksLieInsideAndAreNotTooMany(
      @ForAll @DoubleRange(min = -1000, max = 1000) double start,
      @ForAll @DoubleRange(min = 0.01, max = 1000) double extent,
      @ForAll @IntRange(min = -9, max = 9) int exponent,
      @ForAll @IntRange(min = 1, max = 20) int most) {
    double low = start * Math.pow(10, exponent);
    double width = extent * Math.pow(10, exponent);
    List<Double> ticks = Ticks.between(low, low + width, most);
    double step = Ticks.step(low, low + width, most);
    assertTrue(ticks.size() <= most + 1, ticks.toString());
    for (double tick : ticks) {
      assertTrue(tick >= low - step * 1e-6 && tick <= low + width + step * 1e-6);
    }
  }

  @Property(tries = 500, seed = "9")
  void justAboveIsJustAbove(
      @ForAll @DoubleRange(min = 1, max = 10) double digits,
      @ForAll @IntRange(min = -9, max = 9) int exponent) {
    double value = digits * Math.pow(10, exponent);
    double above = Ticks.justAbove(value);
    assertTrue(above >= value * (1 - 1e-8) && above <= value * 1.34, value + " to " + above);
  }
}
