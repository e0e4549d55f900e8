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
  void theLeastResistanceBoundsTheRailAndTheRestLiesOnTheWay() {
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
    // 4 ohm at 90 mA take 32.4 mW (Joule's law)
    assertTrue(text.contains("the way took 32.4 mW, so heat where the probe sat may be"), text);
    assertTrue(text.contains("Unsteady   birch: the resistance swung from 8 ohm to 14 ohm"), text);
    assertTrue(!text.contains("Unsteady   amber"), text);
  }

  @Test
  void sensedAtTheBoardTheContactIsApartFromTheCopper() {
    ContactShare clean = new ContactShare(7, 0.03, 0.02, 7.03);
    ContactShare dirty = new ContactShare(7.07, 1.5, 0.1, 8.57);
    TouchResult near = touch(1, "near", 1.0, 1 / 7.0, 7, 7, clean);
    TouchResult far = touch(2, "far", 1.0, 1 / 7.07, 7, 7.1, dirty);
    TouchComparison sensed = new TouchComparison(List.of(near, far), true);
    assertEquals(0.07, sensed.extraOhms(far), 1e-9);
    assertEquals(7 / (7.07 * 7.07), sensed.sourceWatts(far), 1e-12);
    assertEquals("least, contact 30 mohm +- 20 mohm", sensed.contact(near));
    String text = String.join("\n", sensed.text());
    assertTrue(text.contains("Farther    far: 70 mohm more of copper"), text);
    assertTrue(text.contains("2 % less power to the source than at near"), text);
    // 1.5 ohm at (1/7.07) A take 30.01 mW (Joule's law).
    assertTrue(
        text.contains("Contact    far: the contact alone had 1.5 ohm +- 100 mohm and took 30.01"),
        text);
    assertTrue(!text.contains("Contact    near"), text);
    assertTrue(!text.contains("the way took"), text);
  }

  @Test
  void theContactIsWhatTerminalsAndBoardDifferByAndNothingIsGuessedWhereOnlyOneIsMeasured() {
    Contact terminals = new Contact(ContactState.STEADY, 1, 8.3, 8.2, 8.4, 0);
    Contact board = new Contact(ContactState.STEADY, 2, 6.8, 6.75, 6.85, 0);
    ContactShare both = ContactShare.of(terminals, board);
    assertEquals(1.5, both.contactOhms(), 1e-9);
    assertEquals(0.15, both.withinOhms(), 1e-9);
    assertEquals("rail 6.8 ohm, contact 1.5 ohm +- 150 mohm", both.text());
    assertEquals("rail 6.8 ohm", ContactShare.railAlone(board).text());
    assertEquals("rail and contact 8.3 ohm", ContactShare.together(terminals).text());
    assertEquals("", ContactShare.together(null).text());
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
    assertEquals("point-7", TouchLabels.parse("numbers").of(7));
  }

  @Test
  void aTouchIsNamedInOrderOrByAKeyAndNoTwoAlike() {
    TouchNames names = new TouchNames(TouchLabels.parse("near,far,mid"));
    assertEquals("near", names.take());
    names.choose(3);
    assertEquals("mid", names.next());
    assertEquals("mid", names.take());
    names.choose("bulk cap");
    assertEquals("bulk cap", names.take());
    assertEquals("far", names.take(), "the first that was not given yet");
    names.choose(1);
    assertEquals("near-2", names.take(), "the same point again");
    assertThrows(IllegalArgumentException.class, () -> names.choose("  "));
  }

  private static TouchResult touch(
      int number, String label, double volts, double amperes, double low, double high) {
    return touch(number, label, volts, amperes, low, high, ContactShare.together(null));
  }

  private static TouchResult touch(
      int number,
      String label,
      double volts,
      double amperes,
      double low,
      double high,
      ContactShare felt) {
    return new TouchResult(
        number,
        label,
        "run",
        "HEAT_FOUND",
        "C37",
        0.2,
        "K",
        volts,
        amperes,
        low,
        high,
        felt,
        5,
        0,
        "");
  }
}
