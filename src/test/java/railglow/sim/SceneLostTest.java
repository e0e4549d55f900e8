package railglow.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import railglow.camera.motion.MotionState;
import railglow.camera.motion.MotionWatch;
import railglow.observed.Frame;
import railglow.observed.FrameMark;
import railglow.sim.fault.FaultSpec;
import railglow.thermal.CountSamples;

/**
 * A pushed camera over a plain board, whose fixed pattern is as strong as the board's structure.
 */
class SceneLostTest {
  /** The camera is pushed after nine seconds. */
  private static final int MOVED_AT = 225;

  private static final int FRAMES_PER_SECOND = 25;

  @Test
  void aCameraPushedFartherThanCanBeFollowedIsLostThoughItsFixedPatternStays() {
    for (int by : new int[] {7, 10, 13, 20, 40, 70, 120}) {
      MotionWatch watch = watch();
      PulsedBench bench = pushedBy(by);
      int lostAt = -1;
      for (int n = 0; n < MOVED_AT + 4 * FRAMES_PER_SECOND && lostAt < 0; n++) {
        MotionState state = watch.look(bench.nextAsFrame(), 40_000_000L * n);
        lostAt = state == MotionState.LOST ? n : -1;
      }
      assertTrue(lostAt > MOVED_AT, by + " pixels: lost at frame " + lostAt);
    }
  }

  @Test
  void aPushWithinReachIsFollowedThoughTheFixedPatternStays() {
    for (int by = 1; by <= 5; by++) {
      MotionWatch watch = watch();
      PulsedBench bench = pushedBy(by);
      int marked = 0;
      for (int n = 0; n < MOVED_AT + 4 * FRAMES_PER_SECOND; n++) {
        Frame frame = bench.nextAsFrame();
        watch.look(frame, 40_000_000L * n);
        boolean moved = frame.marks().contains(FrameMark.MOVED);
        assertTrue(n >= MOVED_AT || !moved, by + " pixels: marked before, at " + n);
        marked += moved ? 1 : 0;
      }
      assertEquals(MotionState.CORRECTED, watch.state(), by + " pixels");
      assertEquals(1, watch.segment(), by + " pixels");
      assertEquals(by, watch.shiftX(), 0.3);
      assertTrue(marked >= 3, by + " pixels: " + marked + " marked");
    }
  }

  private static MotionWatch watch() {
    return new MotionWatch(new CountSamples(256, 192));
  }

  private static PulsedBench pushedBy(int pixels) {
    FaultSpec push = FaultSpec.parse("camera-moved=" + pixels + "px@9s");
    return new PulsedBench(BenchScenarios.hx12().withFaults(List.of(push)), 1.0, 2);
  }
}
