package railglow.run.reduction;

import railglow.thermal.ImageSums;
import railglow.thermal.Plane;
import railglow.thermal.Samples;

/** The mean image before the first cycle: the plain thermal picture. Not thread-safe. */
public final class LeadInMean {
  private static final int ENOUGH = 64;
  private final int width;
  private final int height;
  private final ImageSums sums;

  public LeadInMean(int width, int height) {
    this.width = width;
    this.height = height;
    this.sums = new ImageSums(width * height);
  }

  /** Adds an image; more than are needed are ignored. */
  public void add(Samples samples) {
    if (sums.images() < ENOUGH) {
      sums.add(samples);
    }
  }

  public boolean isEmpty() {
    return sums.images() == 0;
  }

  /**
   * The mean in the unit that scale and zero lead to.
   *
   * @param scale factor on a sample
   * @param zero value of a sample of 0
   */
  public Plane plane(double scale, double zero) {
    Plane plane = new Plane(width, height);
    float[] values = plane.values();
    for (int i = 0; i < values.length; i++) {
      values[i] = (float) (zero + scale * sums.sumAt(i) / sums.images());
    }
    return plane;
  }
}
