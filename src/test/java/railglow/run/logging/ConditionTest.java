package railglow.run.logging;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class ConditionTest {
  private static final long MILLI = 1_000_000L;
  private static final List<String> PLACES = List.of("C37", "tail end");

  private static Trigger trigger(String text) {
    return new Trigger(Condition.parse(text, PLACES));
  }

  private static String refused(String text) {
    return assertThrows(IllegalArgumentException.class, () -> Condition.parse(text, PLACES))
        .getMessage();
  }

  @Test
  void conditionsAreReadAsTheyAreTyped() {
    Condition step = Condition.parse("current step 50 mA", PLACES);
    assertEquals(Condition.Watched.CURRENT, step.watched());
    assertEquals(Condition.Kind.STEP, step.kind());
    assertEquals(0.05, step.bound());
    assertEquals(-1, step.place());
    Condition place = Condition.parse("c37 above 40 degC", PLACES);
    assertEquals(0, place.place());
    assertEquals(Condition.Watched.HOTTEST, place.watched());
    Condition rise = Condition.parse("tail end rise above 2 K", PLACES);
    assertEquals(1, rise.place());
    assertEquals(Condition.Watched.RISE, rise.watched());
    assertEquals(Condition.Watched.RISE, Condition.parse("rise above 2 K", PLACES).watched());
  }

  @Test
  void whatCanNotBeUsedIsSaidWithWhatIsRight() {
    assertTrue(refused("current").contains("is not known; write for example"));
    assertTrue(refused("X9 above 3 degC").contains("[C37, tail end]"));
    assertTrue(refused("current above 3 V").contains("current above 3 V"));
    assertTrue(refused("current step 0 mA").contains("a step above zero"));
  }

  @Test
  void aBoundFiresOnceUntilItWasFalseForASecond() {
    Trigger trigger = trigger("power above 1 W");
    assertEquals(Optional.empty(), trigger.onValue(0, 0.9));
    assertEquals(Optional.of("power above 1 W: at 1.1 W"), trigger.onValue(100 * MILLI, 1.1));
    assertEquals(Optional.empty(), trigger.onValue(200 * MILLI, 1.2));
    assertEquals(Optional.empty(), trigger.onValue(300 * MILLI, 0.9));
    assertEquals(Optional.empty(), trigger.onValue(900 * MILLI, 1.2), "it rang");
    assertEquals(Optional.empty(), trigger.onValue(1000 * MILLI, 0.9));
    assertEquals(Optional.empty(), trigger.onValue(2100 * MILLI, 0.9));
    assertTrue(trigger.onValue(2200 * MILLI, 1.2).isPresent());
  }

  @Test
  void aStepIsAgainstTheMeanOfTheSecondBeforeAndADriftIsNone() {
    Trigger trigger = trigger("current step 50 mA");
    for (int i = 0; i < 40; i++) {
      assertEquals(Optional.empty(), trigger.onValue(100 * i * MILLI, 0.1 + 0.005 * i));
    }
    String why = trigger.onValue(4000 * MILLI, 0.4).orElseThrow();
    assertTrue(why.startsWith("current step 50 mA: from 27"), why);
    assertTrue(why.endsWith("to 400 mA"), why);
  }

  @Test
  void whatIsNoNumberFiresNothing() {
    Trigger trigger = trigger("current below 1 A");
    assertEquals(Optional.empty(), trigger.onValue(0, Double.NaN));
    assertTrue(trigger.onValue(1, 0.5).isPresent());
  }
}
