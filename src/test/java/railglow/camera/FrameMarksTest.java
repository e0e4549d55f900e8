package railglow.camera;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumSet;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import railglow.observed.Frame;
import railglow.observed.FrameMark;
import railglow.thermal.CountSamples;
import railglow.thermal.FloatSamples;

class FrameMarksTest {
  private static final long PERIOD = 40_000_000;
  private final Random random = new Random(3);
  private final short[] pattern = new short[64 * 48];
  private final FrameMarks marks = new FrameMarks(new CountSamples(64, 48), 25, 1);
  private long nanos;
  private double common = 20_000;

  @Test
  void quietFramesGetNoMark() {
    for (int n = 0; n < 200; n++) {
      assertEquals(Set.of(), look(noisy()), "frame " + n);
    }
    assertEquals(0, marks.segment());
  }

  @Test
  void anImageThatStandsStillInEveryPixelIsFrozen() {
    quiet(20);
    CountSamples image = noisy();
    assertEquals(Set.of(), look(image));
    assertEquals(Set.of(FrameMark.FROZEN), look(image));
    assertEquals(Set.of(FrameMark.FROZEN), look(image));
    image.counts()[100]++;
    assertEquals(Set.of(), look(image), "one pixel changed: not frozen");
    assertEquals(2, marks.count(FrameMark.FROZEN));
  }

  @Test
  void aFreezeWithAStepAfterItIsAShutterEventWithItsSettling() {
    quiet(30);
    CountSamples image = noisy();
    look(image);
    for (int n = 0; n < 10; n++) {
      assertEquals(Set.of(FrameMark.FROZEN), look(image));
    }
    common += 40;
    int marked = 0;
    for (int n = 0; n < 60; n++) {
      marked += look(noisy()).contains(FrameMark.SHUTTER) ? 1 : 0;
    }
    assertEquals(26, marked, "one second of settling at 25 Hz, both ends included");
    assertEquals(1, marks.segment());
  }

  @Test
  void aPauseWithANewFixedPatternIsAShutterEvent() {
    quiet(30);
    nanos += 45 * PERIOD;
    for (int i = 0; i < pattern.length; i++) {
      pattern[i] += (short) Math.round(15 * random.nextGaussian());
    }
    assertEquals(Set.of(FrameMark.SHUTTER), look(noisy()));
    assertEquals(1, marks.segment());
  }

  @Test
  void aPauseAloneIsNoShutterEvent() {
    quiet(30);
    nanos += 45 * PERIOD;
    assertEquals(Set.of(), look(noisy()));
    assertEquals(0, marks.segment());
  }

  @Test
  void aSlowCommonDriftIsNoEvent() {
    for (int n = 0; n < 300; n++) {
      common -= 0.3;
      assertEquals(Set.of(), look(noisy()), "frame " + n);
    }
  }

  @Test
  void aSourceThatHeatsUpFastIsNoEvent() {
    quiet(30);
    for (int n = 0; n < 50; n++) {
      CountSamples image = noisy();
      for (int i = 0; i < 9; i++) {
        image.counts()[1000 + i % 3 + 64 * (i / 3)] += (short) (n * 100);
      }
      assertEquals(Set.of(), look(image), "frame " + n);
    }
  }

  @Test
  void aHandInThePictureIsMarkedAsMovedAndOpensANewSegment() {
    quiet(30);
    CountSamples image = noisy();
    for (int i = 0; i < 1200; i++) {
      image.counts()[i] += 800;
    }
    assertTrue(look(image).contains(FrameMark.MOVED));
    assertTrue(look(noisy()).contains(FrameMark.MOVED), "and when it has gone");
    assertEquals(1, marks.segment());
    quiet(30);
    assertEquals(1, marks.segment());
  }

  @Test
  void halfAnEmptyImageIsDamagedAndForgotten() {
    quiet(10);
    CountSamples half = noisy();
    java.util.Arrays.fill(half.counts(), 0, half.counts().length / 2, (short) 0);
    assertEquals(Set.of(FrameMark.DAMAGED), look(half));
    assertEquals(Set.of(), look(noisy()));
  }

  @Test
  void deadPixelsThatAreAlwaysThereAreNoDamageButNewOnesAre() {
    FrameMarks floats = new FrameMarks(new FloatSamples(32, 24), 8, 1);
    for (int n = 0; n < 20; n++) {
      FloatSamples image = new FloatSamples(32, 24);
      for (int i = 0; i < 768; i++) {
        image.values()[i] = i < 10 ? Float.NaN : (float) (25 + 0.1 * random.nextGaussian());
      }
      if (n == 12) {
        java.util.Arrays.fill(image.values(), 300, 340, Float.NaN);
      }
      Frame frame = new Frame(image);
      frame.begin(n, 0);
      floats.mark(frame, n * 125_000_000L);
      assertEquals(n == 12 ? Set.of(FrameMark.DAMAGED) : Set.of(), frame.marks(), "frame " + n);
    }
  }

  private void quiet(int frames) {
    for (int n = 0; n < frames; n++) {
      look(noisy());
    }
  }

  private EnumSet<FrameMark> look(CountSamples image) {
    Frame frame = new Frame(image);
    frame.begin(0, nanos);
    marks.mark(frame, nanos);
    nanos += PERIOD;
    return EnumSet.copyOf(frame.marks());
  }

  /** 5 counts of noise on a standing pattern. */
  private CountSamples noisy() {
    CountSamples image = new CountSamples(64, 48);
    for (int i = 0; i < pattern.length; i++) {
      image.counts()[i] = (short) Math.round(common + pattern[i] + 5 * random.nextGaussian());
    }
    return image;
  }
}
