package railglow.run.reduction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import railglow.journal.Entry;
import railglow.observed.Frame;
import railglow.thermal.CountSamples;
import railglow.thermal.Plane;

/**
 * What real cameras do to frames, and that none of it gets into the difference. A count is 10 mK;
 * noise is 50 mK a frame.
 */
class FrameFaultsTest {
  private static final long START = 123_456_789_012L;
  private static final int W = InventedRun.WIDTH;
  private static final int H = InventedRun.HEIGHT;
  private static final int FLICKERING = 5 * W + 8;
  private static final int DEAD = 15 * W + 25;
  private final Random random = new Random(11);
  private final List<Entry.Cycle> cycles = new ArrayList<>();

  @Test
  void deadAndFlickeringPixelsAreReplacedByTheirNeighboursAndCountedInTheRecord() {
    InventedRun run = new InventedRun(START, 4, 1);
    for (Frame frame : run.frames) {
      short[] counts = counts(frame);
      counts[DEAD] = 20_000;
      counts[FLICKERING] += (short) (random.nextBoolean() ? 150 : 0);
    }
    Reduced reduced = run.reduce(0, cycles);
    assertEquals(
        List.of(
            "Bad pixels of the camera, replaced by their neighbours' mean: 1 dead, 1 flickering"),
        run.notes);
    assertEquals(1, reduced.look().sources().size());
    assertEquals(20.3, reduced.look().sources().get(0).column(), 0.6);
    Plane difference = reduced.look().inPhase();
    // A mean of neighbours: no wilder than any pixel. Alone it would scatter by some 150 mK.
    assertEquals(0, difference.values()[FLICKERING], 0.03);
    Plane background = reduced.background();
    assertEquals(background.values()[DEAD - 1], background.values()[DEAD], 0.2);
  }

  @Test
  void aPixelAtTheEndOfTheScaleIsCountedAndNeverBecomesARise() {
    InventedRun run = new InventedRun(START, 0, 12);
    int alone = 12 * W + 12;
    for (Frame frame : run.frames) {
      short[] counts = counts(frame);
      counts[alone] = (short) (run.isOnAt(frame) ? 0xFFFF : counts[alone]);
      for (int row = 3; row < 10; row++) {
        for (int column = 20; column < 27; column++) {
          // a warm place that is cut off at the top: what is left of its noise follows the pulse
          int value = 65_530 + (run.isOnAt(frame) ? 8 : 0) + (int) (5 * random.nextGaussian());
          counts[row * W + column] = (short) Math.min(0xFFFF, value);
        }
      }
    }
    Reduced reduced = run.reduce(0, cycles);
    assertEquals(8, reduced.cyclesUsed());
    assertEquals(List.of(), reduced.look().sources());
    assertEquals(0, reduced.look().inPhase().values()[alone], 0.01);
    assertEquals(0, reduced.look().inPhase().values()[6 * W + 23], 0.01);
    assertEquals(
        List.of(
            "50 pixels are at the end of the camera's scale and left out from here on, within"
                + " columns 12 to 26 and rows 3 to 12: what is there is hotter than the camera can"
                + " say, and its rise is not known"),
        run.notes);
  }

  @Test
  void aSourceWhoseMiddleIsAtTheEndOfTheScaleIsFoundByWhatIsAroundItAndNotOverstated() {
    InventedRun run = new InventedRun(START, 300, 10);
    for (Frame frame : run.frames) {
      short[] counts = counts(frame);
      for (int i = 0; i < counts.length; i++) {
        counts[i] = (short) Math.min(0xFFFF, (counts[i] & 0xFFFF) + 0xFFFF - 29_150);
      }
    }
    Reduced reduced = run.reduce(0, cycles);
    assertEquals(1, run.notes.size(), run.notes.toString());
    assertEquals(1, reduced.look().sources().size());
    assertEquals(20.3, reduced.look().sources().get(0).column(), 3);
    assertEquals(9.7, reduced.look().sources().get(0).row(), 3);
    assertTrue(reduced.look().sources().get(0).riseKelvin() < 3);
  }

  @Test
  void aReplayRepairsTheSamePixelsToTheSameBits() {
    InventedRun run = new InventedRun(START, 4, 1);
    run.frames.forEach(frame -> counts(frame)[DEAD] = 20_000);
    Plane live = run.reduce(80_000_000L, cycles).look().inPhase();
    Plane replayed = run.replay(new ArrayList<>()).look().inPhase();
    org.junit.jupiter.api.Assertions.assertArrayEquals(live.values(), replayed.values());
  }

  @Test
  void manyPixelsThatMoveInTheLeadInAreASceneAndNotRepaired() {
    InventedRun run = new InventedRun(START, 0, 3);
    for (int n = 0; n < 25; n++) {
      short[] counts = counts(run.frames.get(n));
      for (int i = 0; i < 40; i++) {
        counts[10 * W + 200 + i] += (short) (n % 3 == 0 ? 200 : 0);
      }
    }
    run.reduce(0, cycles);
    assertEquals(1, run.notes.size());
    assertTrue(run.notes.get(0).contains("none was repaired"), run.notes.toString());
  }

  @Test
  void anOffsetStepWithANewPatternAtAShutterEventDoesNotLeakIntoTheDifference() {
    InventedRun run = new InventedRun(START, 0, 4);
    long at = run.header.cycles().get(3).onNanos() + 150_000_000L;
    int[] pattern = new int[W * H];
    for (int i = 0; i < pattern.length; i++) {
      pattern[i] = (int) Math.round(80 + 15 * random.nextGaussian());
    }
    Frame last = null;
    for (Frame frame : run.frames) {
      long since = frame.arrivalNanos() - at;
      if (since >= 0 && since < 400_000_000L && last != null) {
        System.arraycopy(counts(last), 0, counts(frame), 0, W * H);
      } else if (since >= 0) {
        for (int i = 0; i < pattern.length; i++) {
          counts(frame)[i] += (short) pattern[i];
        }
      } else {
        last = frame;
      }
    }
    Reduced reduced = run.reduce(0, cycles);
    assertEquals(List.of(), reduced.look().sources());
    assertTrue(reduced.framesLeftOut().get("frozen") >= 8, reduced.framesLeftOut().toString());
    assertTrue(reduced.framesLeftOut().get("shutter") >= 20, reduced.framesLeftOut().toString());
    assertEquals("a shutter event", cycles.get(3).reason());
    assertTrue(reduced.cyclesUsed() >= 6, "used " + reduced.cyclesUsed());
    assertQuiet(reduced);
  }

  @Test
  void aWholePictureThatFlickersFromFrameToFrameIsNoSource() {
    InventedRun run = new InventedRun(START, 0, 5);
    for (Frame frame : run.frames) {
      int step = (int) Math.round(30 * random.nextGaussian());
      for (int i = 0; i < W * H; i++) {
        counts(frame)[i] += (short) step;
      }
    }
    Reduced reduced = run.reduce(0, cycles);
    assertEquals(8, reduced.cyclesUsed());
    assertEquals(List.of(), reduced.look().sources());
  }

  @Test
  void aRowAndAColumnWithNoiseOfTheirOwnAreNoSource() {
    InventedRun run = new InventedRun(START, 0, 6);
    for (Frame frame : run.frames) {
      int ofRow = (int) Math.round(10 * random.nextGaussian());
      int ofColumn = (int) Math.round(10 * random.nextGaussian());
      for (int x = 0; x < W; x++) {
        counts(frame)[9 * W + x] += (short) ofRow;
      }
      for (int y = 0; y < H; y++) {
        counts(frame)[y * W + 20] += (short) ofColumn;
      }
    }
    Reduced reduced = run.reduce(0, cycles);
    assertEquals(8, reduced.cyclesUsed());
    assertEquals(List.of(), reduced.look().sources());
  }

  /** White noise of 50 mK over some 12 frames a quarter leaves 15 mK a cycle, less over cycles. */
  private static void assertQuiet(Reduced reduced) {
    double squares = 0;
    float[] values = reduced.look().inPhase().values();
    for (float value : values) {
      squares += value * value;
    }
    assertEquals(0, Math.sqrt(squares / values.length), 0.012);
  }

  private static short[] counts(Frame frame) {
    return ((CountSamples) frame.samples()).counts();
  }
}
