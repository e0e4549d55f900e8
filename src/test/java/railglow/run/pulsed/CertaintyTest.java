package railglow.run.pulsed;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import railglow.thermal.HeatSource;
import railglow.thermal.InventedSource;
import railglow.thermal.Look;
import railglow.units.Interval;

class CertaintyTest {
  private final Certainty certainty = new Certainty();

  private static HeatSource at(double column, double variance) {
    Interval interval = new Interval(0.01, 0.03);
    return InventedSource.at(column, 10)
        .variance(variance)
        .swings(0.01, interval)
        .settles(0.02, interval)
        .channels(0.01, 0.01)
        .timeConstant(0.5)
        .p(0.01)
        .source();
  }

  private static Look look(int cycles, HeatSource... sources) {
    return new Look(cycles, List.of(sources), null, 0.01, null, null, null, null);
  }

  @Test
  void theFirstCrossingEndsNothing() {
    assertFalse(certainty.isReached(look(10, at(20, 0.1))));
    assertFalse(certainty.isReached(look(14, at(20, 0.1))));
  }

  @Test
  void aSourceThatStoodThroughTheLastThirdOfTheCyclesEndsTheRun() {
    certainty.isReached(look(10, at(20, 0.1)));
    assertTrue(certainty.isReached(look(15, at(20.5, 0.1))));
  }

  @Test
  void aSourceThatMovesBeginsAnew() {
    certainty.isReached(look(10, at(20, 0.1)));
    assertFalse(certainty.isReached(look(15, at(21.5, 0.1))));
    assertFalse(certainty.isReached(look(22, at(21.5, 0.1))));
    assertTrue(certainty.isReached(look(23, at(21.5, 0.1))));
  }

  @Test
  void aLookWithoutSourceBeginsAnew() {
    certainty.isReached(look(10, at(20, 0.1)));
    assertFalse(certainty.isReached(look(12)));
    assertFalse(certainty.isReached(look(15, at(20, 0.1))));
  }

  @Test
  void aSourceThatIsPoorlyPlacedEndsNothing() {
    certainty.isReached(look(10, at(20, 1)));
    assertFalse(certainty.isReached(look(40, at(20, 1))));
  }
}
