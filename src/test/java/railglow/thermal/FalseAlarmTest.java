package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Scenes without heat; the long version of the table is printed by FalseAlarmStudy. */
class FalseAlarmTest {
  private static int alarms(NoiseScene.Kind kind, int runs, long seed) {
    int alarms = 0;
    for (int run = 0; run < runs; run++) {
      alarms +=
          FalseAlarmStudy.leastP(new NoiseScene(kind, 48, 40, seed + run), 48, 40, 8) <= 0.05
              ? 1
              : 0;
    }
    return alarms;
  }

  /** Of 10 runs at a true 5 %, 4 or more alarms come in one test of 1000. */
  @ParameterizedTest
  @EnumSource(NoiseScene.Kind.class)
  void looksAfterEveryCycleRaiseNoMoreAlarmsThanAllowed(NoiseScene.Kind kind) {
    int alarms = alarms(kind, 10, 300);
    assertTrue(alarms <= 3, () -> alarms + " alarms in 10 runs of " + kind);
  }

  @Test
  @Tag("slow")
  void whiteNoiseIsCalledNeitherTooOftenNorNever() {
    int alarms = alarms(NoiseScene.Kind.WHITE, 1000, 5_000);
    assertTrue(alarms >= 10 && alarms <= 65, () -> alarms + " alarms in 1000 runs");
  }
}
