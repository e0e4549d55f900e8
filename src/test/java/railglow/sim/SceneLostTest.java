package railglow.sim;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import railglow.camera.motion.MotionState;
import railglow.camera.motion.MotionWatch;
import railglow.sim.fault.FaultSpec;
import railglow.thermal.CountSamples;

class SceneLostTest {
  /** The camera is pushed after nine seconds. */
  private static final int MOVED_AT = 225;

  @Test
  void aCameraPushedFartherThanCanBeFollowedIsLostThoughItsFixedPatternStays() {
    for (int by : new int[] {20, 40, 70, 120}) {
      PulsedBench bench =
          new PulsedBench(
              BenchScenarios.hx12()
                  .withFaults(List.of(FaultSpec.parse("camera-moved=" + by + "px@9s"))),
              1.0,
              2);
      MotionWatch watch = new MotionWatch(new CountSamples(256, 192));
      int lostAt = -1;
      for (int n = 0; n < MOVED_AT + 200 && lostAt < 0; n++) {
        MotionState state = watch.look(bench.nextAsFrame(), 40_000_000L * n);
        lostAt = state == MotionState.LOST ? n : -1;
      }
      assertTrue(lostAt > MOVED_AT, by + " pixels: lost at frame " + lostAt);
    }
  }
}
