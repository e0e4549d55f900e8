package railglow.thermal;

/**
 * Sums of images of one kind, pixel by pixel: exact for counts; of floats as doubles, NaN where one
 * was NaN. Adding an image allocates nothing but at the first. Not thread-safe.
 */
public final class ImageSums {
  private final int pixels;
  private CountSums counts;
  private double[] floats;
  private int images;

  /** Of images of so many pixels. */
  public ImageSums(int pixels) {
    this.pixels = pixels;
  }

  /**
   * Adds an image of the same kind as those before.
   *
   * @throws IllegalStateException beyond {@link CountSums#MOST_IMAGES} of counts
   */
  public void add(Samples samples) {
    if (samples instanceof CountSamples image) {
      counts = counts == null ? new CountSums(pixels) : counts;
      counts.add(image.counts());
    } else if (samples instanceof FloatSamples image) {
      floats = floats == null ? new double[pixels] : floats;
      float[] values = image.values();
      for (int i = 0; i < floats.length; i++) {
        floats[i] += values[i];
      }
    }
    images++;
  }

  /** How many images have been added. */
  public int images() {
    return images;
  }

  /** The sum of one pixel; 0 before the first image. */
  public double sumAt(int pixel) {
    if (counts != null) {
      return counts.sumAt(pixel);
    }
    return floats == null ? 0 : floats[pixel];
  }
}
