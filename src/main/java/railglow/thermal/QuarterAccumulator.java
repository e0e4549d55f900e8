package railglow.thermal;

import java.util.Arrays;

/**
 * Sums the frames of one cycle into its four quarters. Counts are summed as integers, exactly;
 * floats as doubles, leaving out NaN pixels. Adding a frame allocates nothing. Not thread-safe.
 *
 * <p>The first image ever added becomes the offset of the run, so that the means keep their digits
 * as floats: a mean is (sum / frames - offset) x kelvin per count.
 */
public final class QuarterAccumulator {
  private final int width;
  private final int height;
  private final double kelvinPerCount;
  private final int[] frames = new int[4];

  /** By quarter. */
  private CountSums[] countSums;

  /** The first image. */
  private short[] countOffset;

  private double[][] floatSums;
  private int[][] missing;
  private double[] floatOffset;

  /**
   * @param kelvinPerCount scale of the samples; 1 for cameras that give temperatures or have no
   *     scale
   */
  public QuarterAccumulator(int width, int height, double kelvinPerCount) {
    if (width <= 0 || height <= 0 || !(kelvinPerCount > 0)) {
      throw new IllegalArgumentException(
          "an image of " + width + " x " + height + " at " + kelvinPerCount + " K per count");
    }
    this.width = width;
    this.height = height;
    this.kelvinPerCount = kelvinPerCount;
  }

  /**
   * Adds one frame to a quarter.
   *
   * @param quarter 1 to 4
   */
  public void add(int quarter, Samples samples) {
    if (quarter < 1 || quarter > 4) {
      throw new IllegalArgumentException("quarter " + quarter + " is not 1 to 4");
    }
    if (samples.width() != width || samples.height() != height) {
      throw new IllegalArgumentException(
          "a frame of %d x %d in a run of %d x %d"
              .formatted(samples.width(), samples.height(), width, height));
    }
    if (frames[quarter - 1] == CountSums.MOST_IMAGES) {
      throw new IllegalStateException(
          "more than " + CountSums.MOST_IMAGES + " frames in one quarter");
    }
    if (samples instanceof CountSamples counts) {
      addCounts(counts.counts(), quarter - 1);
    } else if (samples instanceof FloatSamples floats) {
      addFloats(floats.values(), quarter - 1);
    }
    frames[quarter - 1]++;
  }

  private void addCounts(short[] counts, int quarter) {
    if (countSums == null) {
      int pixels = counts.length;
      countSums =
          new CountSums[] {
            new CountSums(pixels),
            new CountSums(pixels),
            new CountSums(pixels),
            new CountSums(pixels)
          };
      countOffset = counts.clone();
    }
    countSums[quarter].add(counts);
  }

  private void addFloats(float[] values, int quarter) {
    if (floatSums == null) {
      floatSums = new double[4][values.length];
      missing = new int[4][values.length];
      floatOffset = new double[values.length];
      for (int i = 0; i < values.length; i++) {
        floatOffset[i] = Float.isFinite(values[i]) ? values[i] : 0;
      }
    }
    double[] sums = floatSums[quarter];
    int[] gaps = missing[quarter];
    for (int i = 0; i < sums.length; i++) {
      if (Float.isFinite(values[i])) {
        sums[i] += values[i] - floatOffset[i];
      } else {
        gaps[i]++;
      }
    }
  }

  /** How many frames a quarter has got since the last reset; quarter 1 to 4. */
  public int framesIn(int quarter) {
    return frames[quarter - 1];
  }

  /** Whether every quarter has at least so many frames. */
  public boolean eachQuarterHas(int atLeast) {
    for (int n : frames) {
      if (n < atLeast) {
        return false;
      }
    }
    return true;
  }

  /** Forgets the sums, keeps the offset of the run. */
  public void reset() {
    Arrays.fill(frames, 0);
    for (int quarter = 0; quarter < 4; quarter++) {
      if (countSums != null) {
        countSums[quarter].reset();
      }
      if (floatSums != null) {
        Arrays.fill(floatSums[quarter], 0);
        Arrays.fill(missing[quarter], 0);
      }
    }
  }

  /**
   * The means of the four quarters; then starts afresh. A pixel without a single valid sample in a
   * quarter is NaN there.
   *
   * @throws IllegalStateException if a quarter has no frame
   */
  public QuarterMeans finish(int cycle) {
    if (!eachQuarterHas(1)) {
      throw new IllegalStateException(
          "cycle " + cycle + " has a quarter without frames: " + Arrays.toString(frames));
    }
    QuarterMeans means =
        new QuarterMeans(cycle, mean(0), mean(1), mean(2), mean(3), frames.clone());
    reset();
    return means;
  }

  private Plane mean(int quarter) {
    float[] mean = new float[width * height];
    if (countSums != null) {
      countSums[quarter].takeMeansAbove(countOffset, kelvinPerCount, mean);
    } else {
      int n = frames[quarter];
      double[] sums = floatSums[quarter];
      int[] gaps = missing[quarter];
      for (int i = 0; i < mean.length; i++) {
        mean[i] = (float) (sums[i] / (n - gaps[i]) * kelvinPerCount);
      }
    }
    return new Plane(width, height, mean);
  }
}
