package railglow.run.ladder;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class LadderPlanTest {
  @Property(tries = 200, seed = "1")
  void levelsRiseFromAlmostNothingToExactlyTheHighest(
      @ForAll @DoubleRange(min = 0.1, max = 24) double highest,
      @ForAll @IntRange(min = 4, max = 50) int steps) {
    LadderPlan plan = LadderPlan.upTo(highest, steps, 0.5);
    assertEquals(steps, plan.levelsVolts().size());
    assertEquals(highest, plan.highestVolts());
    assertTrue(plan.levelsVolts().get(0) <= Math.max(0.5 * highest, 0.021));
    assertTrue(plan.levelsVolts().stream().allMatch(level -> level <= highest));
  }

  @Test
  void levelsThatFallOrAreNotThereAreRefused() {
    assertThrows(IllegalArgumentException.class, () -> new LadderPlan(List.of(0.2, 0.1), 0.1, 0.5));
    assertThrows(IllegalArgumentException.class, () -> new LadderPlan(List.of(), 0.1, 0.5));
    assertThrows(IllegalArgumentException.class, () -> new LadderPlan(List.of(0.1), 0.5, 0.5));
  }
}
