package railglow.run.handsfree;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class TouchComparisonTest {
  private static final TouchResult AMBER = touch(1, "amber", 0.98, 0.14, 6.9, 7.1);
  private static final TouchResult BIRCH = touch(2, "birch", 0.99, 0.09, 8, 14);
  private static final TouchResult AIR = touch(3, "cedar", Double.NaN, Double.NaN, 0, 0);

  @Test
  void theLeastResistanceBoundsTheRailAndTheRestIsContact() {
    TouchComparison both = new TouchComparison(List.of(BIRCH, AMBER, AIR), false);
    assertEquals(7.0, both.railOhmsAtMost(), 1e-9);
    assertEquals(4.0, both.extraOhms(BIRCH), 1e-9);
    assertEquals(0.14 * 0.14 * 7, both.sourceWatts(AMBER), 1e-12);
    assertEquals(0.09 * 0.09 * 7, both.sourceWatts(BIRCH), 1e-12);
    assertEquals("amber", both.best().orElseThrow().label());
  }

  @Test
  void aSpoiltAndAnUnsteadyPointAreNamedWithWhatTheyCost() {
    String text = String.join("\n", new TouchComparison(List.of(AMBER, BIRCH), false).text());
    assertTrue(text.contains("Best       amber"), text);
    assertTrue(text.contains("Spoilt     birch: 4 ohm more"), text);
    assertTrue(text.contains("59 % less power"), text); // 1 - (0.09/0.14)^2
    assertTrue(text.contains("Unsteady   birch: the resistance swung from 8 ohm to 14 ohm"), text);
    assertTrue(!text.contains("Unsteady   amber"), text);
  }

  @Test
  void sensedAtTheBoardThePowerIsVoltsTimesAmperesAndNoContactIsGuessed() {
    TouchComparison sensed = new TouchComparison(List.of(AMBER, BIRCH), true);
    assertEquals(0.99 * 0.09, sensed.sourceWatts(BIRCH), 1e-12);
    assertTrue(Double.isNaN(sensed.extraOhms(BIRCH)));
    assertTrue(!String.join("\n", sensed.text()).contains("Spoilt"));
  }

  @Test
  void withoutAnyMeasurementThereIsNoBestPoint() {
    TouchComparison none = new TouchComparison(List.of(AIR), false);
    assertTrue(none.best().isEmpty());
    assertEquals(2, none.text().size());
  }

  @Test
  void labelsGoOnWithANumberAndAreCheckedWhenGiven() {
    assertEquals("amber", TouchLabels.USUAL.of(1));
    assertEquals("amber-2", TouchLabels.USUAL.of(TouchLabels.USUAL.words().size() + 1));
    assertEquals("b", TouchLabels.parse("a, b").of(2));
    assertThrows(IllegalArgumentException.class, () -> TouchLabels.parse("a,,b"));
    assertThrows(IllegalArgumentException.class, () -> TouchLabels.parse("a,a"));
  }

  private static TouchResult touch(
      int number, String label, double volts, double amperes, double low, double high) {
    return new TouchResult(
        number, label, "run", "HEAT_FOUND", "C37", 0.2, "K", volts, amperes, low, high, 5, 0, "");
  }
}
