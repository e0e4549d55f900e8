package railglow.camera.motion;

import java.util.Arrays;

/**
 * How far an image is shifted against a reference, by least squares on the pixels themselves (Lucas
 * and Kanade, IJCAI 1981, in the form that keeps the reference's gradients: Baker and Matthews,
 * IJCV 56, 2004). Against phase correlation it has the least error that the noise allows, and tells
 * that error.
 *
 * <p>Common changes of the whole image, of rows and of columns take no part. Pixels that differ far
 * more than the rest (a heat source that came up) do not count. A pure function of reference, image
 * and start; allocates nothing per image. Not thread-safe.
 *
 * <p>A camera's fixed pattern stays where it is when the scene moves, and would pull the estimate
 * towards no shift. The pull is the product of the pattern's gradient in the reference with the
 * same pattern in the image, whose mean follows from the pattern's strength (see {@link
 * FixedPattern}) and the smoothing alone: it is taken out.
 */
public final class ShiftEstimator {
  private static final double SIGMA = 1.2;
  private static final int MAX_ITERATIONS = 30;
  private static final double CONVERGED_PIXELS = 5e-4;

  /**
   * A small step below this many standard errors is the last one and needs no second look at what
   * is left: the next would be a small part of the error (decision 0091).
   */
  private static final double WITHIN_NOISE = 2;

  private static final double SMALL_PIXELS = 0.05;

  private static final double OUTLIER = 4;
  private static final double MAX_STEP_PIXELS = 1.5;
  private final int width;
  private final int height;
  private final int margin;
  private final Smoothing smoothing;
  private final Translation translation;
  private final CentredWindow window;

  /** The image, smoothed, with its margin; the planes below are without it. */
  private final float[][] image;

  private final float[][] moved;
  private float[][] reference;
  private float[][] gradientX;
  private float[][] gradientY;
  private float[][] structure;
  private final FixedPattern pattern;
  private double hxx;
  private double hxy;
  private double hyy;
  private double sxx;
  private double sxy;
  private double syy;
  private double shiftX;
  private double shiftY;
  private double residual;
  private double texture;
  private double structurePower;

  /**
   * @param width of the images, pixels, at least 16
   * @param height of the images, pixels, at least 16
   */
  public ShiftEstimator(int width, int height) {
    if (width < 16 || height < 16) {
      throw new IllegalArgumentException("an image of " + width + " x " + height + " is too small");
    }
    this.width = width;
    this.height = height;
    this.margin = Math.min(8, Math.min(width, height) / 6);
    this.smoothing = new Smoothing(width, height, SIGMA);
    this.translation = new Translation(width, height, margin);
    this.window = new CentredWindow(width, height, margin);
    this.pattern = new FixedPattern(width, height, margin, SIGMA, smoothing.varianceFactor());
    this.image = new float[height][width];
    this.moved = window.newPlane();
    this.reference = window.newPlane();
    this.structure = window.newPlane();
    this.gradientX = window.newPlane();
    this.gradientY = window.newPlane();
  }

  /** The largest shift, in pixels along either side, that can be measured. */
  public double reachPixels() {
    return margin - 2;
  }

  /** Sets what images are compared with; best a mean of many. */
  public void setReference(float[] values) {
    pattern.measure(values);
    smoothing.apply(values, image);
    reference = window.cut(image);
    float[] slopesX = new float[width * height];
    float[] slopesY = new float[width * height];
    for (int row = 1; row < height - 1; row++) {
      for (int x = 1; x < width - 1; x++) {
        slopesX[row * width + x] = (image[row][x + 1] - image[row][x - 1]) / 2;
        slopesY[row * width + x] = (image[row + 1][x] - image[row - 1][x]) / 2;
      }
    }
    gradientX = centred(slopesX);
    gradientY = centred(slopesY);
    hxx = pattern.withoutOwnPart(window.product(gradientX, gradientX));
    hxy = window.product(gradientX, gradientY);
    hyy = pattern.withoutOwnPart(window.product(gradientY, gradientY));
    structure = centred(image);
    texture = window.robustScale(structure);
    structurePower = window.product(structure, structure);
    // Noise enters through the smoothing once more: see sigmaPixels.
    float[][] smoothed = new float[height][width];
    smoothing.apply(slopesX, smoothed);
    float[][] twiceX = centred(smoothed);
    smoothing.apply(slopesY, smoothed);
    float[][] twiceY = centred(smoothed);
    sxx = window.product(twiceX, twiceX);
    sxy = window.product(twiceX, twiceY);
    syy = window.product(twiceY, twiceY);
  }

  private float[][] centred(float[] values) {
    float[][] rows = new float[height][];
    for (int row = 0; row < height; row++) {
      rows[row] = Arrays.copyOfRange(values, row * width, (row + 1) * width);
    }
    return centred(rows);
  }

  private float[][] centred(float[][] values) {
    float[][] plane = window.cut(values);
    window.centre(plane);
    return plane;
  }

  /**
   * Measures an image from a start.
   *
   * @return whether the search settled within reach
   */
  public boolean estimate(float[] values, double startX, double startY) {
    smoothing.apply(values, image);
    return refine(startX, startY);
  }

  /** Measures an image, from the best of all whole shifts within reach. */
  public boolean estimateFromAfar(float[] values) {
    smoothing.apply(values, image);
    int reach = (int) reachPixels();
    double best = Double.POSITIVE_INFINITY;
    int bestX = 0;
    int bestY = 0;
    for (int dy = -reach; dy <= reach; dy++) {
      for (int dx = -reach; dx <= reach; dx++) {
        double difference = window.meanAbsoluteDifference(image, dx, dy, reference);
        if (difference < best) {
          best = difference;
          bestX = dx;
          bestY = dy;
        }
      }
    }
    return refine(bestX, bestY);
  }

  /** How far the scene stands right of where it was in the reference, pixels. */
  public double shiftX() {
    return shiftX;
  }

  /** How far the scene stands below where it was in the reference, pixels. */
  public double shiftY() {
    return shiftY;
  }

  /** The root mean square of what is left after the shift, smoothed, in the images' unit. */
  public double residual() {
    return residual;
  }

  /** The strength of the reference's own structure, smoothed, in the images' unit. */
  public double texture() {
    return texture;
  }

  /** The strength of the camera's fixed pattern in the reference, smoothed, likewise. */
  double patternStrength() {
    return pattern.strength();
  }

  /**
   * Which part of the reference's own structure is missing from the image at the present shift: 0
   * where all is there, 1 where nothing is. A camera's fixed pattern, always there, keeps it below
   * 1.
   */
  public double missing() {
    return structurePower > 0 ? -window.product(structure, moved) / structurePower : 0;
  }

  /**
   * The standard error of either coordinate, the larger one, from what is left after the shift:
   * with gradients g, smoothing k and noise n, the estimate is H^-1 sum(g (k*n)), so its covariance
   * is var(n) H^-1 sum((k*g)(k*g)') H^-1. Infinite where the reference has no texture.
   */
  public double sigmaPixels() {
    double determinant = hxx * hyy - hxy * hxy;
    if (!(determinant > 1e-12 * hxx * hyy)) {
      return Double.POSITIVE_INFINITY;
    }
    double axx = hyy / determinant;
    double axy = -hxy / determinant;
    double ayy = hxx / determinant;
    double varianceX = axx * axx * sxx + 2 * axx * axy * sxy + axy * axy * syy;
    double varianceY = axy * axy * sxx + 2 * axy * ayy * sxy + ayy * ayy * syy;
    return noise() * Math.sqrt(Math.max(varianceX, varianceY));
  }

  /** Of one pixel, as what is left after the shift tells it, in the images' unit. */
  double noise() {
    return residual / Math.sqrt(smoothing.varianceFactor());
  }

  /** By how much each pixel adds to {@link #shiftX}, while an image is nearly in its place. */
  float[] rightPerPixel() {
    double determinant = hxx * hyy - hxy * hxy;
    return perPixel(gradientX, -hyy / determinant, gradientY, hxy / determinant);
  }

  /** By how much each pixel adds to {@link #shiftY}, likewise. */
  float[] downPerPixel() {
    double determinant = hxx * hyy - hxy * hxy;
    return perPixel(gradientX, hxy / determinant, gradientY, -hxx / determinant);
  }

  /** By how much each pixel adds to {@link #missing}, likewise. */
  float[] missingPerPixel() {
    return perPixel(structure, -1 / structurePower, structure, 0);
  }

  private float[] perPixel(float[][] one, double oneFactor, float[][] other, double otherFactor) {
    float[] weights = new float[width * height];
    for (int row = 0; row < one.length; row++) {
      for (int x = 0; x < one[row].length; x++) {
        weights[(margin + row) * width + margin + x] =
            (float) (oneFactor * one[row][x] + otherFactor * other[row][x]);
      }
    }
    return smoothing.spread(weights);
  }

  private boolean refine(double startX, double startY) {
    shiftX = startX;
    shiftY = startY;
    double determinant = hxx * hyy - hxy * hxy;
    if (!(determinant > 1e-12 * hxx * hyy)) {
      measureResidual();
      return false;
    }
    for (int i = 0; i < MAX_ITERATIONS; i++) {
      measureResidual();
      double bx = window.product(gradientX, moved) - pattern.pull(shiftX, shiftY);
      double by = window.product(gradientY, moved) - pattern.pull(shiftY, shiftX);
      double stepX = (hyy * bx - hxy * by) / determinant;
      double stepY = (hxx * by - hxy * bx) / determinant;
      double length = Math.hypot(stepX, stepY);
      double scale = length > MAX_STEP_PIXELS ? MAX_STEP_PIXELS / length : 1;
      shiftX -= scale * stepX;
      shiftY -= scale * stepY;
      if (!(Math.max(Math.abs(shiftX), Math.abs(shiftY)) <= reachPixels())) {
        shiftX = startX;
        shiftY = startY;
        measureResidual();
        return false;
      }
      double withinNoise = Math.min(SMALL_PIXELS, WITHIN_NOISE * sigmaPixels());
      if (length < Math.max(CONVERGED_PIXELS, withinNoise)) {
        return true;
      }
    }
    measureResidual();
    return true;
  }

  /** Leaves image - reference at the present shift in {@code moved}, centred. */
  private void measureResidual() {
    translation.apply(image, shiftX, shiftY, moved);
    CentredWindow.subtract(moved, reference);
    window.centreWithoutOutliers(moved, OUTLIER);
    residual = window.robustScale(moved);
  }
}
