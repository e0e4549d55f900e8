package railglow.thermal;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
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

  /** A thousand runs of each kind: the upper 95 % bound below 6 %, white noise not below 1 %. */
  @ParameterizedTest
  @EnumSource(NoiseScene.Kind.class)
  @Tag("slow")
  void inAThousandRunsOfEachKindTheAlarmsStayBelowSixPercent(NoiseScene.Kind kind) {
    int alarms = alarms(kind, 1000, 5_000);
    double upper = FalseAlarmStudy.bound(alarms, 1000, 0.95);
    assertTrue(upper < 0.06, () -> alarms + " alarms in 1000 runs of " + kind);
    assertTrue(
        kind != NoiseScene.Kind.WHITE || alarms >= 10,
        () -> "a test so shy that it never speaks: " + alarms + " in 1000");
  }

  @Test
  @Tag("slow")
  void inAThousandPulsesThatNeverWereARealCameraAlarmsInFewerThanSixPercent() {
    for (String name : FalseAlarmStudy.RECORDED) {
      double[] least = FalseAlarmStudy.recorded(Recording.require(name), 1000);
      int alarms = (int) Arrays.stream(least).filter(p -> p <= 0.05).count();
      assertTrue(
          FalseAlarmStudy.bound(alarms, 1000, 0.95) < 0.06, () -> alarms + " alarms in " + name);
    }
  }
}
