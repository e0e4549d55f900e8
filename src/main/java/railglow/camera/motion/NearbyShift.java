package railglow.camera.motion;

import java.util.Arrays;
import railglow.thermal.CountSamples;
import railglow.thermal.Samples;

/**
 * How far the scene stands from where it stood in an image that was measured shortly before. While
 * there is little more than noise between the two, shift and missing structure follow from the
 * change of all pixels, each with a weight of its own: the measurement's first step, at a fraction
 * of its cost (decision 0109). What changes more than noise does is left to a measurement. Only
 * counts are compared. Allocates nothing per image. Not thread-safe.
 */
final class NearbyShift {
  /** A measured image serves for so many that follow. */
  private static final int IMAGES = 10;

  /** Of noise in both images; beyond it a measurement is wanted. */
  private static final double SIGMAS = 3.5 * Math.sqrt(2);

  private final ImageReduction reduction;
  private final SquareSums squares;
  private final int[][] base;
  private final int[][] change;
  private final int[] sizes;
  private WeighedChange right;
  private WeighedChange down;
  private WeighedChange missing;
  private double shiftX;
  private double shiftY;
  private double missingThere;
  private double changeX;
  private double changeY;
  private double changeMissing;
  private double noise;
  private int left;

  /**
   * @param reduction from the camera's picture to the one that is measured
   */
  NearbyShift(int cameraWidth, int cameraHeight, ImageReduction reduction) {
    this.reduction = reduction;
    this.squares = new SquareSums(cameraWidth, cameraHeight, 2 * reduction.factor());
    this.base = squares.newSums();
    this.change = squares.newSums();
    this.sizes = new int[cameraWidth / (2 * reduction.factor())];
  }

  /** The reference has been set: takes over what pixels add to what is measured. */
  void setReference(ShiftEstimator estimator) {
    right = weighed(estimator.rightPerPixel());
    down = weighed(estimator.downPerPixel());
    missing = weighed(estimator.missingPerPixel());
  }

  private WeighedChange weighed(float[] perPixel) {
    int counts = reduction.factor() * reduction.factor();
    return new WeighedChange(perPixel, reduction.width(), reduction.height(), counts);
  }

  /** An image was measured, and stands in its place: those that follow are compared with it. */
  void begin(Samples image, ShiftEstimator measured) {
    if (image instanceof CountSamples counted) {
      squares.sum(counted.counts(), base);
      shiftX = measured.shiftX();
      shiftY = measured.shiftY();
      missingThere = measured.missing();
      noise = measured.noise();
      left = IMAGES;
    }
  }

  /** The next image must be measured. */
  void end() {
    left = 0;
  }

  /** Whether no more than noise has come between an image and the one measured last. */
  boolean isNear(Samples image) {
    if (left == 0) {
      return false;
    }
    left--;
    squares.sum(((CountSamples) image).counts(), change);
    Arrays.fill(sizes, 0);
    for (int row = 0; row < change.length; row++) {
      subtract(change[row], base[row]);
      addSizes(sizes, change[row]);
    }
    int most = 0;
    for (int size : sizes) {
      most = Math.max(most, size);
    }
    if (most > WeighedChange.mostChange()) {
      return false;
    }
    changeX = right.of(change);
    changeY = down.of(change);
    changeMissing = missing.of(change);
    return isNoise(right, changeX) && isNoise(down, changeY) && isNoise(missing, changeMissing);
  }

  private boolean isNoise(WeighedChange weighed, double value) {
    return Math.abs(value) <= SIGMAS * weighed.sigma(noise);
  }

  /** As {@link ShiftEstimator#shiftX}. */
  double shiftX() {
    return shiftX + changeX;
  }

  /** As {@link ShiftEstimator#shiftY}. */
  double shiftY() {
    return shiftY + changeY;
  }

  /** As {@link ShiftEstimator#missing}. */
  double missing() {
    return missingThere + changeMissing;
  }

  private static void subtract(int[] from, int[] values) {
    for (int x = 0; x < from.length; x++) {
      from[x] -= values[x];
    }
  }

  private static void addSizes(int[] sums, int[] values) {
    for (int x = 0; x < sums.length; x++) {
      sums[x] += Math.abs(values[x]);
    }
  }
}
