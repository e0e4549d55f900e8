package railglow.camera.motion;

import java.util.Arrays;

/**
 * Sums over an image without a margin, after every row's and every column's own mean was taken out.
 * Allocates nothing per image. Not thread-safe.
 */
final class CentredWindow {
  private static final int SPARSE = 3;
  private static final int ENOUGH = 2000;
  private static final double MEAN_ABSOLUTE_TO_SIGMA = 1.2533;
  private static final double MEDIAN_ABSOLUTE_TO_SIGMA = 1.4826;
  private final int width;
  private final int height;
  private final int margin;
  private final double[] rowMeans;
  private final double[] columnMeans;
  private final int[] columnCounts;
  private final float[] sorted;
  private final int stride;

  CentredWindow(int width, int height, int margin) {
    this.width = width;
    this.height = height;
    this.margin = margin;
    this.rowMeans = new double[height];
    this.columnMeans = new double[width];
    this.columnCounts = new int[width];
    int pixels = (width - 2 * margin) * (height - 2 * margin);
    this.stride = Math.max(1, pixels / ENOUGH) | 1;
    this.sorted = new float[pixels / stride + 1];
  }

  /** Takes row and column means out; they are taken over the window, which alone is kept right. */
  void centre(float[] values) {
    centre(values, Double.POSITIVE_INFINITY);
  }

  /**
   * As {@link #centre(float[])}, then once more without the pixels that stand out by more than the
   * limit; those become zero. So a heat source neither counts nor pulls its rows and columns along.
   */
  void centreWithoutOutliers(float[] values, double limitInScales) {
    centre(values, Double.POSITIVE_INFINITY);
    centre(values, limitInScales * medianScale(values));
  }

  private void centre(float[] values, double limit) {
    Arrays.fill(columnMeans, 0);
    Arrays.fill(columnCounts, 0);
    double all = 0;
    int count = 0;
    for (int row = margin; row < height - margin; row++) {
      double sum = 0;
      int used = 0;
      for (int x = margin; x < width - margin; x++) {
        float value = values[row * width + x];
        if (Math.abs(value) <= limit) {
          sum += value;
          used++;
          columnMeans[x] += value;
          columnCounts[x]++;
        }
      }
      rowMeans[row] = used == 0 ? 0 : sum / used;
      all += sum;
      count += used;
    }
    double mean = count == 0 ? 0 : all / count;
    for (int x = margin; x < width - margin; x++) {
      columnMeans[x] = columnCounts[x] == 0 ? 0 : columnMeans[x] / columnCounts[x];
    }
    for (int row = margin; row < height - margin; row++) {
      for (int x = margin; x < width - margin; x++) {
        int at = row * width + x;
        boolean out = Math.abs(values[at]) > limit;
        values[at] = out ? 0 : (float) (values[at] - (rowMeans[row] + columnMeans[x] - mean));
      }
    }
  }

  double product(float[] a, float[] b) {
    double sum = 0;
    for (int row = margin; row < height - margin; row++) {
      for (int x = margin; x < width - margin; x++) {
        sum += (double) a[row * width + x] * b[row * width + x];
      }
    }
    return sum;
  }

  /**
   * The standard deviation as the mean absolute value tells it, less moved by a few wild pixels.
   */
  double robustScale(float[] values) {
    double sum = 0;
    for (int row = margin; row < height - margin; row++) {
      for (int x = margin; x < width - margin; x++) {
        sum += Math.abs(values[row * width + x]);
      }
    }
    int count = (width - 2 * margin) * (height - 2 * margin);
    return MEAN_ABSOLUTE_TO_SIGMA * sum / count;
  }

  /** The standard deviation as the median absolute value of a part of the pixels tells it. */
  private double medianScale(float[] values) {
    int used = 0;
    int next = 0;
    for (int row = margin; row < height - margin; row++) {
      for (int x = margin; x < width - margin; x++) {
        if (next++ % stride == 0) {
          sorted[used++] = Math.abs(values[row * width + x]);
        }
      }
    }
    Arrays.sort(sorted, 0, used);
    return MEDIAN_ABSOLUTE_TO_SIGMA * sorted[used / 2];
  }

  /** Between an image moved by whole pixels and the reference, on every third pixel. */
  double meanAbsoluteDifference(float[] image, int dx, int dy, float[] reference) {
    double offset = 0;
    int count = 0;
    for (int row = margin; row < height - margin; row += SPARSE) {
      for (int x = margin; x < width - margin; x += SPARSE) {
        offset += image[(row + dy) * width + x + dx] - reference[row * width + x];
        count++;
      }
    }
    offset /= count;
    double sum = 0;
    for (int row = margin; row < height - margin; row += SPARSE) {
      for (int x = margin; x < width - margin; x += SPARSE) {
        double difference = image[(row + dy) * width + x + dx] - reference[row * width + x];
        sum += Math.abs(difference - offset);
      }
    }
    return sum / count;
  }
}
