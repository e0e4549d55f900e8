package railglow.camera.motion;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;
import railglow.observed.Frame;
import railglow.observed.FrameMark;
import railglow.thermal.CountSamples;
import railglow.thermal.Samples;

class MotionWatchTest {
  private static final int W = 96;
  private static final int H = 72;
  private static final long PERIOD = 40_000_000;
  private final SceneThroughOptics scene = new SceneThroughOptics(W, H, 1.5, 8);
  private final float[] pattern = new float[W * H];
  private final Random random = new Random(9);
  private final MotionWatch watch = new MotionWatch(new CountSamples(W, H));
  private long nanos;

  @Test
  void aStillSceneIsLeftExactlyAsItIs() {
    learn();
    for (int n = 0; n < 400; n++) {
      CountSamples image = seen(0, 0);
      short[] before = image.counts().clone();
      Frame frame = look(image);
      assertEquals(MotionState.STILL, watch.state(), "frame " + n);
      assertSame(image, corrected(image), "frame " + n);
      assertArrayEquals(before, image.counts(), "frame " + n);
      assertTrue(frame.marks().isEmpty());
    }
  }

  @Test
  void aSlowSmallDriftIsUndone() {
    learn();
    double left = 0;
    double uncorrected = 0;
    float[] still = scene.seen(0, 0);
    for (int n = 0; n < 500; n++) {
      double shift = 0.3 * n / 500;
      CountSamples image = seen(shift, 0);
      uncorrected = n < 400 ? 0 : uncorrected + difference(image, still);
      Frame frame = look(image);
      assertTrue(frame.marks().isEmpty(), "frame " + n);
      left = n < 400 ? 0 : left + difference(corrected(image), still);
    }
    assertEquals(MotionState.CORRECTED, watch.state());
    assertEquals(0.3, watch.shiftX(), 0.03);
    assertEquals(0, watch.segment());
    assertTrue(left < 0.75 * uncorrected, left + " of " + uncorrected);
  }

  @Test
  void aNudgeIsMarkedOpensASegmentAndIsUndoneAfterwards() {
    SceneThroughOptics.addNoise(pattern, 0.05, random);
    learn();
    look(seen(0, 0));
    int marked = 0;
    for (int n = 0; n < 50; n++) {
      marked += look(seen(2.4, -1.2)).marks().contains(FrameMark.MOVED) ? 1 : 0;
    }
    assertEquals(3, marked);
    assertEquals(1, watch.segment());
    assertEquals(MotionState.CORRECTED, watch.state());
    assertEquals(2.4, watch.shiftX(), 0.1);
    assertEquals(-1.2, watch.shiftY(), 0.1);
  }

  /** When most frames are only compared with the one that was measured last. */
  @Test
  void aNudgeAfterALongTimeIsMarkedWithItsFirstFrame() {
    learn();
    for (int still : new int[] {200, 3, 5, 8}) {
      for (int n = 0; n < still; n++) {
        assertTrue(look(seen(0, 0)).marks().isEmpty());
      }
      assertTrue(look(seen(0.6, 0)).marks().contains(FrameMark.MOVED));
    }
  }

  @Test
  void aSceneThatIsGoneForTwoSecondsIsLost() {
    learn();
    SceneThroughOptics other = new SceneThroughOptics(W, H, 1.5, 77);
    for (int n = 0; n < 60; n++) {
      look(image(other.seen(0, 0)));
    }
    assertEquals(MotionState.LOST, watch.state());
  }

  @Test
  void aHandForASecondIsMarkedAndForgotten() {
    learn();
    for (int n = 0; n < 25; n++) {
      CountSamples image = seen(0, 0);
      for (int i = 0; i < W * H / 2; i++) {
        image.counts()[i] += (short) (600 + (20 + n) * (i % W));
      }
      look(image);
      assertEquals(MotionState.MOVED, watch.state(), "frame " + n);
    }
    look(seen(0, 0));
    look(seen(0, 0));
    assertEquals(MotionState.STILL, watch.state());
    assertEquals(0, watch.segment());
  }

  @Test
  void withoutTextureNoFrameIsTouched() {
    for (int n = 0; n < 60; n++) {
      Frame frame = look(image(new float[W * H]));
      assertTrue(frame.marks().isEmpty());
    }
    assertEquals(MotionState.CANT_TELL, watch.state());
    String said = watch.blindness().orElseThrow();
    assertTrue(said.startsWith("The scene is too plain for a moved camera to be seen"), said);
    MotionWatch tiny = new MotionWatch(new CountSamples(8, 8));
    assertEquals(MotionState.CANT_TELL, tiny.state());
    assertFalse(tiny.sigmaPixels() < 1);
    assertTrue(tiny.blindness().orElseThrow().startsWith("The picture is too small"));
  }

  private void learn() {
    for (int n = 0; n < 30; n++) {
      look(seen(0, 0));
    }
    assertEquals(MotionState.STILL, watch.state());
    assertTrue(watch.blindness().isEmpty());
  }

  private Frame look(CountSamples image) {
    Frame frame = new Frame(image);
    frame.begin(nanos / PERIOD, nanos);
    watch.look(frame, nanos);
    nanos += PERIOD;
    return frame;
  }

  private CountSamples seen(double x, double y) {
    return image(scene.seen(x, y));
  }

  /** 100 counts per kelvin, 50 mK of noise. */
  private CountSamples image(float[] kelvin) {
    CountSamples image = new CountSamples(W, H);
    for (int i = 0; i < kelvin.length; i++) {
      double noisy = kelvin[i] + pattern[i] + 0.05 * random.nextGaussian();
      image.counts()[i] = (short) Math.round(29_815 + 100 * noisy);
    }
    return image;
  }

  private Samples corrected(CountSamples image) {
    return watch.corrected(image, watch.correctionX(), watch.correctionY());
  }

  private static double difference(Samples image, float[] kelvin) {
    double sum = 0;
    for (int row = 3; row < H - 3; row++) {
      for (int column = 3; column < W - 3; column++) {
        int i = row * W + column;
        sum += Math.pow((image.valueAt(i) - 29_815) / 100 - kelvin[i], 2);
      }
    }
    return sum;
  }
}
