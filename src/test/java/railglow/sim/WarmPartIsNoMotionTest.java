package railglow.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.List;
import org.junit.jupiter.api.Test;
import railglow.camera.motion.MotionState;
import railglow.camera.motion.MotionWatch;
import railglow.observed.Frame;
import railglow.observed.FrameMark;
import railglow.sim.hand.HandMove;
import railglow.sim.hand.HandScript;
import railglow.thermal.CountSamples;

/** A part that warms by kelvins in step with the pulse moves nothing: the camera stands still. */
class WarmPartIsNoMotionTest {
  private static final int CYCLES = 14;

  /** What wanders over the board is neither the camera nor the board. */
  @Test
  void aReflectionThatWandersIsNotTakenForAMovedCamera() {
    PulsedBench bench =
        new PulsedBench(BenchScenarios.named("hx12-mirrored").orElseThrow(), 1.0, 2);
    MotionWatch watch = new MotionWatch(new CountSamples(256, 192));
    for (int n = 0; n < 2 * CYCLES * 50; n++) {
      Frame frame = bench.nextAsFrame();
      watch.look(frame, 40_000_000L * n);
      assertFalse(frame.marks().contains(FrameMark.MOVED), "frame " + n);
    }
    assertEquals(0, watch.segment());
  }

  @Test
  void aPartThatGrowsHotInEachPulseIsNotTakenForAMovedCamera() {
    PulsedBench bench =
        new PulsedBench(
            BenchScenarios.hx12()
                .withHand(new HandScript(List.of(HandMove.parse("touch:C9@0s..600s")))),
            2.0,
            2);
    MotionWatch watch = new MotionWatch(new CountSamples(256, 192));
    int moved = 0;
    int known = 0;
    for (int n = 0; n < CYCLES * 50; n++) {
      Frame frame = bench.nextAsFrame();
      watch.look(frame, 40_000_000L * n);
      moved += frame.marks().contains(FrameMark.MOVED) ? 1 : 0;
      known += watch.state() == MotionState.STILL ? 1 : 0;
    }
    assertEquals(0, moved, "frames said to have moved");
    assertEquals(0, watch.segment());
    assertFalse(known < CYCLES * 25, "the scene is too plain to tell: " + known);
  }
}
