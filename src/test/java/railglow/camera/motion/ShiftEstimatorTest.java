package railglow.camera.motion;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

class ShiftEstimatorTest {
  private static final int W = 128;
  private static final int H = 96;
  private final Random random = new Random(2);
  private final ShiftEstimator estimator = new ShiftEstimator(W, H);

  @Test
  void shiftsUpToFivePixelsAreRightWithinATwentiethAtFiftyMillikelvin() {
    SceneThroughOptics scene = new SceneThroughOptics(W, H, 1, 1);
    estimator.setReference(noisy(scene.seen(0, 0), 0.01));
    for (double shift : new double[] {0, 0.1, 0.25, 0.5, 0.75, 1, 1.5, 2, 3.3, 4.6, 5}) {
      for (int k = 0; k < 4; k++) {
        assertTrue(estimator.estimateFromAfar(noisy(scene.seen(shift, -shift / 2), 0.05)));
        assertEquals(shift, estimator.shiftX(), 0.05);
        assertEquals(-shift / 2, estimator.shiftY(), 0.05);
      }
    }
  }

  /** Without its correction this pattern pulls the estimate back by 0.15 pixel. */
  @Test
  void aFixedPatternOfAThirdOfTheContrastDoesNotHoldTheEstimateBack() {
    SceneThroughOptics scene = new SceneThroughOptics(W, H, 0.5, 1);
    float[] pattern = noisy(new float[W * H], 0.15);
    estimator.setReference(noisy(plus(scene.seen(0, 0), pattern), 0.01));
    for (double shift : new double[] {0, 0.5, 1, 1.7, 2.3}) {
      double sum = 0;
      for (int k = 0; k < 4; k++) {
        float[] image = noisy(plus(scene.seen(shift, 0), pattern), 0.05);
        assertTrue(estimator.estimateFromAfar(image));
        sum += estimator.shiftX() / 4;
      }
      assertEquals(shift, sum, 0.05);
    }
  }

  private static float[] plus(float[] image, float[] pattern) {
    for (int i = 0; i < image.length; i++) {
      image[i] += pattern[i];
    }
    return image;
  }

  /** Coverage of three of its own standard errors, where interpolation adds nothing. */
  @Test
  void theStatedErrorIsTheTrueScatter() {
    SceneThroughOptics scene = new SceneThroughOptics(W, H, 0.5, 3);
    estimator.setReference(scene.seen(0, 0));
    double squares = 0;
    double stated = 0;
    int runs = 60;
    for (int k = 0; k < runs; k++) {
      estimator.estimate(noisy(scene.seen(0, 0), 0.05), 0, 0);
      squares += Math.pow(estimator.shiftX(), 2) + Math.pow(estimator.shiftY(), 2);
      stated += estimator.sigmaPixels();
    }
    double scatter = Math.sqrt(squares / (2 * runs));
    // 120 values: the scatter itself is known to 6.5 %; the stated one is the larger coordinate's.
    assertEquals(1.1, stated / runs / scatter, 0.25);
  }

  /** Starting again from the answer, a further round must not move it by what the noise allows. */
  @Test
  void theLastStepLeavesLessThanATenthOfTheStandardError() {
    for (double contrast : new double[] {0.2, 1, 3}) {
      for (double kelvin : new double[] {0.017, 0.05, 0.15}) {
        SceneThroughOptics scene = new SceneThroughOptics(W, H, contrast, 6);
        estimator.setReference(noisy(scene.seen(0, 0), kelvin / 8));
        for (double shift : new double[] {0, 0.01, 0.1, 0.6}) {
          float[] image = noisy(scene.seen(shift, -shift / 2), kelvin);
          assertTrue(estimator.estimate(image, 0, 0));
          double x = estimator.shiftX();
          double y = estimator.shiftY();
          assertTrue(estimator.estimate(image, x, y));
          double allowed = Math.max(5e-4, estimator.sigmaPixels() / 10);
          assertEquals(estimator.shiftX(), x, allowed, contrast + " K " + kelvin + " " + shift);
          assertEquals(estimator.shiftY(), y, allowed, contrast + " K " + kelvin + " " + shift);
        }
      }
    }
  }

  @Test
  void rowsColumnsOffsetsAndAHotSpotTakeNoPart() {
    SceneThroughOptics scene = new SceneThroughOptics(W, H, 1, 4);
    estimator.setReference(scene.seen(0, 0));
    float[] image = noisy(scene.seen(0.4, 0.2), 0.05);
    for (int row = 0; row < H; row++) {
      for (int column = 0; column < W; column++) {
        double spot = 8 * Math.exp(-(Math.pow(row - 40, 2) + Math.pow(column - 70, 2)) / 18);
        image[row * W + column] +=
            (float) (3 + 0.05 * Math.sin(7 * column) + 0.03 * Math.cos(5 * row) + spot);
      }
    }
    assertTrue(estimator.estimate(image, 0, 0));
    assertEquals(0.4, estimator.shiftX(), 0.05);
    assertEquals(0.2, estimator.shiftY(), 0.05);
  }

  @Test
  void withoutTextureNothingIsClaimed() {
    estimator.setReference(new float[W * H]);
    assertFalse(estimator.estimate(noisy(new float[W * H], 0.05), 0, 0));
    assertEquals(Double.POSITIVE_INFINITY, estimator.sigmaPixels());
    assertThrows(IllegalArgumentException.class, () -> new ShiftEstimator(15, 40));
  }

  @Test
  void movingBackUndoesAShiftOfASmoothImage() {
    SceneThroughOptics scene = new SceneThroughOptics(W, H, 1, 5);
    float[][] still = new float[H][W];
    float[][] moved = new float[H][W];
    float[][] back = new float[H - 8][W - 8];
    Smoothing smoothing = new Smoothing(W, H, 1.2);
    smoothing.apply(scene.seen(0, 0), still);
    smoothing.apply(scene.seen(0.3, -0.6), moved);
    new Translation(W, H, 4).apply(moved, 0.3, -0.6, back);
    for (int row = 4; row < H - 4; row++) {
      for (int column = 4; column < W - 4; column++) {
        assertEquals(still[row][column], back[row - 4][column - 4], 0.02);
      }
    }
  }

  private float[] noisy(float[] image, double kelvin) {
    SceneThroughOptics.addNoise(image, kelvin, random);
    return image;
  }
}
