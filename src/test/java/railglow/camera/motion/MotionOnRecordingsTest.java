package railglow.camera.motion;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.EnumSet;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import railglow.camera.RecordedFrames;
import railglow.camera.Recordings;
import railglow.observed.Frame;
import railglow.thermal.Samples;

class MotionOnRecordingsTest {
  /** The stated truth: camera and scene stand still. */
  @ParameterizedTest
  @ValueSource(strings = {"a_lepton3_static_489", "b_lepton3_flat_102"})
  void noFrameOfAStillRecordingIsMarkedOrMoved(String name) throws IOException {
    Set<MotionState> states = states(name);
    states.removeAll(Set.of(MotionState.LEARNING, MotionState.STILL, MotionState.CANT_TELL));
    assertEquals(Set.of(), states);
  }

  /** A camera that warms up changes its pattern, which looks like a tenth of a pixel. */
  @Test
  void aCameraThatWarmsUpIsNotTakenForANudge() throws IOException {
    Set<MotionState> states = states("f_lepton3x_startup_ck_82");
    assertFalse(states.contains(MotionState.MOVED), states.toString());
    assertFalse(states.contains(MotionState.LOST), states.toString());
  }

  private static Set<MotionState> states(String name) throws IOException {
    Set<MotionState> states = EnumSet.noneOf(MotionState.class);
    try (RecordedFrames frames = Recordings.open(name)) {
      MotionWatch watch = new MotionWatch(frames.newSamples());
      for (int n = 0; n < frames.count(); n++) {
        Frame frame = new Frame(frames.newSamples());
        frames.read(n, frame.samples());
        frame.begin(n, 0);
        states.add(watch.look(frame, Math.round(n * 0.114e9)));
      }
    }
    return states;
  }

  /**
   * Real texture (the mean of each recording as far as optics can have made it), moved by a known
   * shift, under a pattern as strong as the camera's own that stays where it is, and given 50 mK of
   * noise; one count is 20 mK, of the last recording 10 mK.
   */
  @ParameterizedTest
  @CsvSource({
    "b_lepton3_flat_102, 2.5",
    "f_lepton3x_startup_ck_82, 5",
  })
  void realTexturesMovedByAKnownShiftAreMeasuredToATwentiethOfAPixel(String name, double noise)
      throws IOException {
    MeanImage mean = MeanImage.of(name);
    Random random = new Random(4);
    ShiftEstimator estimator = new ShiftEstimator(mean.width(), mean.height());
    float[][] textureRows = new float[mean.height()][mean.width()];
    new Smoothing(mean.width(), mean.height(), 0.8).apply(mean.values(), textureRows);
    float[] texture = SceneThroughOptics.flat(textureRows);
    float[] pattern = new float[texture.length];
    SceneThroughOptics.addNoise(pattern, patternOf(mean.values(), texture), random);
    estimator.setReference(plus(texture, pattern));
    Translation translation = new Translation(mean.width(), mean.height(), 0);
    float[][] moved = new float[mean.height()][mean.width()];
    for (double shift : new double[] {0, 0.2, 0.5, 1, 2.3, 4, 5}) {
      translation.apply(textureRows, -shift, 0.5 * shift, moved);
      float[] image = plus(SceneThroughOptics.flat(moved), pattern);
      SceneThroughOptics.addNoise(image, noise, random);
      assertTrue(estimator.estimateFromAfar(image), "shift " + shift);
      // A bare wall (the first) has little to go by, and says so in its stated error.
      double allowed = Math.max(0.05, 2.5 * estimator.sigmaPixels());
      assertTrue(allowed < 0.1, "stated error " + estimator.sigmaPixels());
      assertEquals(shift, estimator.shiftX(), allowed);
      assertEquals(-0.5 * shift, estimator.shiftY(), allowed);
    }
  }

  /** The standard deviation of what optics can't have made, by the median against edges. */
  private static double patternOf(float[] image, float[] texture) {
    double[] rest = new double[image.length];
    for (int i = 0; i < rest.length; i++) {
      rest[i] = Math.abs(image[i] - texture[i]);
    }
    java.util.Arrays.sort(rest);
    return 1.4826 * rest[rest.length / 2];
  }

  private static float[] plus(float[] image, float[] pattern) {
    float[] sum = image.clone();
    for (int i = 0; i < sum.length; i++) {
      sum[i] += pattern[i];
    }
    return sum;
  }

  @Test
  void theMeanOfARecordingHasItsSize() throws IOException {
    assertEquals(160, MeanImage.of("b_lepton3_flat_102").width());
  }

  private record MeanImage(int width, int height, float[] values) {
    static MeanImage of(String name) throws IOException {
      try (RecordedFrames frames = Recordings.open(name)) {
        Samples image = frames.newSamples();
        double[] sum = new double[image.width() * image.height()];
        for (int n = 0; n < frames.count(); n++) {
          frames.read(n, image);
          for (int i = 0; i < sum.length; i++) {
            sum[i] += image.valueAt(i) / frames.count();
          }
        }
        float[] values = new float[sum.length];
        for (int i = 0; i < sum.length; i++) {
          values[i] = (float) sum[i];
        }
        return new MeanImage(image.width(), image.height(), values);
      }
    }
  }
}
