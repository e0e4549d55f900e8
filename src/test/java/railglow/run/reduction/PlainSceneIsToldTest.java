package railglow.run.reduction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import railglow.camera.motion.MotionWatch;
import railglow.journal.CameraFacts;
import railglow.observed.Frame;
import railglow.thermal.CountSamples;

/** Where a moved camera can't be seen, whoever runs a bench is told once. */
class PlainSceneIsToldTest {
  private static final int W = 64;
  private static final int H = 48;
  private static final CameraFacts CAMERA =
      new CameraFacts(
          "camera", W, H, "uint16", 25, 0.01, -273.15, 0.05, 0.03, 0.01, true, false, 1, 65_535);
  private final Random random = new Random(4);
  private final List<String> told = new ArrayList<>();

  @Test
  void aSceneWithoutTextureIsToldOnce() {
    watch(0);
    assertEquals(1, told.size(), told.toString());
    assertTrue(told.get(0).startsWith("The scene is too plain"), told.toString());
    assertTrue(told.get(0).contains("keep camera and board still"), told.toString());
  }

  @Test
  void aSceneWithPartsIsNotSpokenOf() {
    watch(100);
    assertEquals(List.of(), told);
  }

  private void watch(int partCounts) {
    FrameSight sight =
        new FrameSight(
            CAMERA,
            new CountSamples(W, H),
            new MotionWatch(new CountSamples(W, H)),
            new DeafListener() {

              @Override
              public void onNote(String sentence, long nowNanos) {
                told.add(sentence);
              }
            });
    for (int n = 0; n < 100; n++) {
      CountSamples image = new CountSamples(W, H);
      for (int i = 0; i < W * H; i++) {
        boolean part = i % W / 9 % 2 == 0 && i / W / 7 % 2 == 0;
        image.counts()[i] =
            (short) Math.round(29_800 + (part ? partCounts : 0) + 5 * random.nextGaussian());
      }
      Frame frame = new Frame(image);
      frame.begin(n, n * 40_000_000L);
      sight.see(frame);
    }
  }
}
