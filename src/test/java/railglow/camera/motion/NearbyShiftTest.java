package railglow.camera.motion;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;
import railglow.thermal.CountSamples;

/** An image measured once, and what is told of those after it without measuring them. */
class NearbyShiftTest {
  private static final int W = 96;
  private static final int H = 72;
  private static final double COUNTS_PER_KELVIN = 100;
  private final Random random = new Random(21);
  private final SceneThroughOptics scene = new SceneThroughOptics(W, H, 1.5, 8);
  private final ShiftEstimator estimator = new ShiftEstimator(W, H);
  private final NearbyShift nearby = new NearbyShift(W, H, new ImageReduction(W, H));

  @Test
  void shiftAndMissingStructureAreToldNearlyAsAMeasurementDoes() {
    learn();
    double sigma = estimator.sigmaPixels();
    double squares = 0;
    int told = 0;
    for (int n = 0; n < 200; n++) {
      double shift = 2 * sigma * random.nextDouble();
      CountSamples image = image(scene.seen(shift, -shift));
      measureInPlace();
      if (nearby.isNear(image)) {
        told++;
        assertTrue(estimator.estimate(values(image), 0, 0));
        squares += Math.pow(estimator.shiftX() - nearby.shiftX(), 2);
        squares += Math.pow(estimator.shiftY() - nearby.shiftY(), 2);
        assertEquals(estimator.missing(), nearby.missing(), 0.003);
      }
    }
    assertTrue(told > 150, told + " of 200 were told");
    double difference = Math.sqrt(squares / (2 * told));
    assertTrue(difference < 0.4 * sigma, difference + " with an error of " + sigma);
  }

  @Test
  void whatChangesMoreThanNoiseIsLeftToAMeasurement() {
    learn();
    double sigma = estimator.sigmaPixels();
    assertTrue(10 * sigma < 0.1, "sigma is " + sigma);
    for (double shift : new double[] {10 * sigma, -10 * sigma, 0.25, 1, 5}) {
      measureInPlace();
      assertFalse(nearby.isNear(image(scene.seen(shift, 0))), shift + " to the right");
      assertFalse(nearby.isNear(image(scene.seen(0, shift))), shift + " down");
    }
    float[] warm = scene.seen(0, 0);
    for (int row = 20; row < 50; row++) {
      for (int column = 20; column < 60; column++) {
        warm[row * W + column] += 2;
      }
    }
    assertFalse(nearby.isNear(image(warm)), "a part grew warm");
    assertFalse(nearby.isNear(image(new float[W * H])), "covered");
    float[] wild = scene.seen(0, 0);
    for (int i = W / 2; i < wild.length; i += W) {
      wild[i] += 300;
    }
    assertFalse(nearby.isNear(image(wild)), "sums that no longer fit");
  }

  @Test
  void theWholeImageItsRowsAndItsColumnsTakeNoPart() {
    learn();
    float[] image = scene.seen(0, 0);
    for (int i = 0; i < image.length; i++) {
      image[i] += 3 + i / W % 5 + i % W % 7;
    }
    measureInPlace();
    assertTrue(nearby.isNear(image(image)));
  }

  @Test
  void oneMeasurementServesForTenImages() {
    learn();
    measureInPlace();
    CountSamples same = image(scene.seen(0, 0));
    nearby.begin(same, estimator);
    for (int n = 0; n < 10; n++) {
      assertTrue(nearby.isNear(same));
    }
    assertFalse(nearby.isNear(same));
  }

  /** The picture at which motion is looked for may be smaller than the camera's. */
  @Test
  void squaresAreAddedUpAtAnyEvenSide() {
    for (int side : new int[] {2, 4, 6}) {
      int width = 4 * side + 1;
      short[] counts = new short[width * 2 * side];
      for (int i = 0; i < counts.length; i++) {
        counts[i] = (short) (40_000 + random.nextInt(20_000));
      }
      SquareSums squares = new SquareSums(width, 2 * side, side);
      int[][] sums = squares.newSums();
      squares.sum(counts, sums);
      for (int i = 0; i < 8; i++) {
        int sum = 0;
        for (int k = 0; k < side * side; k++) {
          sum += counts[(i / 4 * side + k / side) * width + i % 4 * side + k % side] & 0xFFFF;
        }
        assertEquals(sum, sums[i / 4][i % 4]);
      }
    }
  }

  private void learn() {
    estimator.setReference(values(image(scene.seen(0, 0), 0.01)));
    nearby.setReference(estimator);
    measureInPlace();
  }

  private void measureInPlace() {
    CountSamples base = image(scene.seen(0, 0));
    assertTrue(estimator.estimate(values(base), 0, 0));
    nearby.begin(base, estimator);
  }

  private CountSamples image(float[] kelvin) {
    return image(kelvin, 0.05);
  }

  private CountSamples image(float[] kelvin, double noise) {
    CountSamples image = new CountSamples(W, H);
    for (int i = 0; i < kelvin.length; i++) {
      double noisy = kelvin[i] + noise * random.nextGaussian();
      image.counts()[i] = (short) Math.round(25_000 + COUNTS_PER_KELVIN * noisy);
    }
    return image;
  }

  private static float[] values(CountSamples image) {
    float[] values = new float[W * H];
    for (int i = 0; i < values.length; i++) {
      values[i] = image.counts()[i] & 0xFFFF;
    }
    return values;
  }
}
