package railglow.camera.motion;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.management.ManagementFactory;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import railglow.camera.Tables;
import railglow.observed.Frame;
import railglow.thermal.CountSamples;

/** Which part of a frame's period motion takes at 640 x 512 and 60 Hz, in processor time. */
@Tag("slow")
class MotionCostTablesTest {
  private static final int W = 640;
  private static final int H = 512;
  private static final double PERIOD_MILLIS = 1000.0 / 60;

  /** More than six seconds: from then on most images are only compared. */
  private static final int LEARNING = 370;

  private static final int MEASURED = 100;
  private static final int IMAGES = 8;
  private final Random random = new Random(3);

  @Test
  void motionTakesASmallPartOfAPeriod() {
    CountSamples[] here = images(new SceneThroughOptics(W, H, 1, 1));
    CountSamples[] elsewhere = images(new SceneThroughOptics(W, H, 1, 2));
    Tables table =
        new Tables(
            "motion-cost", "scene", "processor time per frame", "median", "of a period at 60 Hz");
    row(table, "still", here, here, MotionState.STILL);
    row(table, "moved and not found", here, elsewhere, MotionState.MOVED);
    table.write();
  }

  private static void row(
      Tables table, String scene, CountSamples[] first, CountSamples[] then, MotionState state) {
    double[] millis = {};
    // The first time compiles the code.
    for (int time = 0; time < 3; time++) {
      millis = millis(first, then, state);
    }
    double mean = Arrays.stream(millis).average().orElseThrow();
    double median = Arrays.stream(millis).sorted().toArray()[MEASURED / 2];
    table.row("%s | %.2f ms | %.2f ms | %.1f %%", scene, mean, median, 100 * mean / PERIOD_MILLIS);
    assertTrue(mean < PERIOD_MILLIS, scene + " takes " + mean + " ms");
  }

  private static double[] millis(CountSamples[] first, CountSamples[] then, MotionState expected) {
    MotionWatch watch = new MotionWatch(first[0]);
    double[] millis = new double[MEASURED];
    for (int n = 0; n < LEARNING + MEASURED; n++) {
      Frame frame = new Frame((n < LEARNING ? first : then)[n % IMAGES]);
      frame.begin(n, Math.round(n * 1e6 * PERIOD_MILLIS));
      long begin = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
      watch.look(frame, frame.arrivalNanos());
      long end = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
      if (n >= LEARNING) {
        millis[n - LEARNING] = (end - begin) / 1e6;
      }
    }
    assertEquals(expected, watch.state());
    return millis;
  }

  private CountSamples[] images(SceneThroughOptics scene) {
    float[] kelvin = scene.seen(0, 0);
    CountSamples[] images = new CountSamples[IMAGES];
    for (int k = 0; k < IMAGES; k++) {
      images[k] = new CountSamples(W, H);
      for (int i = 0; i < kelvin.length; i++) {
        double noisy = kelvin[i] + 0.05 * random.nextGaussian();
        images[k].counts()[i] = (short) Math.round(29_815 + 100 * noisy);
      }
    }
    return images;
  }
}
