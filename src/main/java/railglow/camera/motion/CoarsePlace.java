package railglow.camera.motion;

import java.util.Arrays;

/**
 * Where a scene stands by its large structure alone, roughly but far out: on a picture of means
 * over many pixels a camera's fixed pattern, which stays where it is, weighs next to nothing, while
 * parts of a board remain. Tells when the scene suddenly stands elsewhere than it is taken to. All
 * lengths are pixels of the finer picture. Allocates nothing per image. Not thread-safe.
 */
final class CoarsePlace {
  private static final int LEAST_SIDE = 24;

  /** Heat and moving reflections shift the rough place by less than this, and slowly. */
  private static final double TELLING_COARSE_PIXELS = 0.8;

  private static final double SIGMAS = 6;

  /** The structure must be so much stronger than what pattern is left. */
  private static final double ABOVE_PATTERN = 2;

  /** Weight of the newest image in what is usual: ten are remembered. */
  private static final double WEIGHT = 0.1;

  private final int factor;
  private final int fineWidth;
  private final int width;
  private final int height;
  private final ShiftEstimator estimator;
  private final float[] coarse;
  private final float[] line;
  private final float[] sums;
  private double usualX;
  private double usualY;
  private boolean begun;
  private boolean tells;
  private boolean elsewhere;

  /**
   * @param width of the finer picture, pixels
   * @param height likewise
   */
  CoarsePlace(int width, int height) {
    int least = Math.min(width, height);
    this.factor = least / 4 >= LEAST_SIDE ? 4 : 2;
    this.fineWidth = width;
    this.width = width / factor;
    this.height = height / factor;
    this.estimator =
        least / factor >= LEAST_SIDE ? new ShiftEstimator(this.width, this.height) : null;
    this.coarse = new float[this.width * this.height];
    this.line = new float[width];
    this.sums = new float[width];
  }

  /** Sets what images are compared with. */
  void setReference(float[] fine) {
    if (estimator != null) {
      reduce(fine);
      estimator.setReference(coarse);
      tells = estimator.texture() > ABOVE_PATTERN * estimator.patternStrength();
    }
  }

  /** Learns anew what is usual. */
  void begin() {
    begun = false;
    usualX = 0;
    usualY = 0;
    elsewhere = false;
  }

  /**
   * Looks at the next image.
   *
   * @param fineX where the scene is taken to stand
   * @param fineY likewise
   * @return whether it suddenly stands elsewhere: at {@link #shiftX} and {@link #shiftY}
   */
  boolean isElsewhere(float[] fine, double fineX, double fineY) {
    if (!tells) {
      return false;
    }
    reduce(fine);
    // begun where it usually stands beside the fine place, it mostly settles in one step
    if (!estimator.estimate(coarse, fineX / factor + usualX, fineY / factor + usualY)) {
      return false;
    }
    double offX = estimator.shiftX() - fineX / factor;
    double offY = estimator.shiftY() - fineY / factor;
    if (!begun) {
      begun = true;
      usualX = offX;
      usualY = offY;
    }
    double away = Math.hypot(offX - usualX, offY - usualY);
    double limit = Math.max(TELLING_COARSE_PIXELS, SIGMAS * estimator.sigmaPixels());
    elsewhere = away > (elsewhere ? limit / 2 : limit);
    if (elsewhere) {
      return true;
    }
    usualX += WEIGHT * (offX - usualX);
    usualY += WEIGHT * (offY - usualY);
    return false;
  }

  /** How far the scene stands right of its first place. */
  double shiftX() {
    return estimator.shiftX() * factor;
  }

  /** How far the scene stands below its first place. */
  double shiftY() {
    return estimator.shiftY() * factor;
  }

  /** Adds whole rows first, of which the compiler makes vector code (decision 0090). */
  private void reduce(float[] fine) {
    float share = 1.0f / (factor * factor);
    for (int row = 0; row < height; row++) {
      Arrays.fill(sums, 0);
      for (int y = 0; y < factor; y++) {
        System.arraycopy(fine, (row * factor + y) * fineWidth, line, 0, fineWidth);
        add(sums, line);
      }
      for (int column = 0; column < width; column++) {
        int at = column * factor;
        float sum = sums[at] + sums[at + 1];
        coarse[row * width + column] =
            share * (factor == 2 ? sum : sum + (sums[at + 2] + sums[at + 3]));
      }
    }
  }

  private static void add(float[] sums, float[] row) {
    for (int x = 0; x < sums.length; x++) {
      sums[x] += row[x];
    }
  }
}
