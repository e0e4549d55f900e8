package railglow.camera.motion;

import java.util.Arrays;
import railglow.thermal.Selection;

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
  private final float[] columnMeans;
  private final int[] columnCounts;
  private final float[] line;
  private final float[] sorted;
  private final int stride;

  CentredWindow(int width, int height, int margin) {
    this.width = width;
    this.height = height;
    this.margin = margin;
    this.rowMeans = new double[height];
    this.columnMeans = new float[width];
    this.columnCounts = new int[width];
    this.line = new float[width];
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
    float most = (float) limit;
    Arrays.fill(columnMeans, 0);
    Arrays.fill(columnCounts, 0);
    double all = 0;
    int count = 0;
    for (int row = margin; row < height - margin; row++) {
      System.arraycopy(values, row * width, line, 0, width);
      int out = setOutliersToZero(line, most);
      double sum = sum(line);
      int used = width - 2 * margin - out;
      addTo(columnMeans, line);
      if (out > 0) {
        uncount(values, row * width, most);
      }
      rowMeans[row] = used == 0 ? 0 : sum / used;
      all += sum;
      count += used;
    }
    double mean = count == 0 ? 0 : all / count;
    for (int x = margin; x < width - margin; x++) {
      int used = height - 2 * margin - columnCounts[x];
      columnMeans[x] = used == 0 ? 0 : columnMeans[x] / used;
    }
    for (int row = margin; row < height - margin; row++) {
      int start = row * width;
      System.arraycopy(values, start, line, 0, width);
      subtract(line, columnMeans, (float) (rowMeans[row] - mean));
      for (int x = margin; x < width - margin; x++) {
        values[start + x] = Math.abs(values[start + x]) <= most ? line[x] : 0;
      }
    }
  }

  /** How many there were within the window. */
  private int setOutliersToZero(float[] row, float most) {
    int out = 0;
    for (int x = margin; x < width - margin; x++) {
      if (!(Math.abs(row[x]) <= most)) {
        row[x] = 0;
        out++;
      }
    }
    return out;
  }

  /** Counts per column the pixels that do not count. */
  private void uncount(float[] values, int start, float most) {
    for (int x = margin; x < width - margin; x++) {
      columnCounts[x] += Math.abs(values[start + x]) <= most ? 0 : 1;
    }
  }

  private static void addTo(float[] sums, float[] row) {
    for (int x = 0; x < sums.length; x++) {
      sums[x] += row[x];
    }
  }

  private static void subtract(float[] row, float[] columns, float common) {
    for (int x = 0; x < columns.length; x++) {
      row[x] -= columns[x] + common;
    }
  }

  /** In four chains, for one waits for every addition before the next. */
  private double sum(float[] row) {
    int x = margin;
    int end = width - margin;
    double a = 0;
    double b = 0;
    double c = 0;
    double d = 0;
    for (; x + 3 < end; x += 4) {
      a += row[x];
      b += row[x + 1];
      c += row[x + 2];
      d += row[x + 3];
    }
    for (; x < end; x++) {
      a += row[x];
    }
    return (a + b) + (c + d);
  }

  /** In four chains; see {@link #sum}. */
  double product(float[] one, float[] other) {
    double a = 0;
    double b = 0;
    double c = 0;
    double d = 0;
    for (int row = margin; row < height - margin; row++) {
      int at = row * width + margin;
      int end = (row + 1) * width - margin;
      for (; at + 3 < end; at += 4) {
        a += (double) one[at] * other[at];
        b += (double) one[at + 1] * other[at + 1];
        c += (double) one[at + 2] * other[at + 2];
        d += (double) one[at + 3] * other[at + 3];
      }
      for (; at < end; at++) {
        a += (double) one[at] * other[at];
      }
    }
    return (a + b) + (c + d);
  }

  /**
   * The standard deviation as the mean absolute value tells it, less moved by a few wild pixels.
   */
  double robustScale(float[] values) {
    double sum = 0;
    for (int row = margin; row < height - margin; row++) {
      for (int x = margin; x < width - margin; x++) {
        line[x] = Math.abs(values[row * width + x]);
      }
      sum += sum(line);
    }
    int count = (width - 2 * margin) * (height - 2 * margin);
    return MEAN_ABSOLUTE_TO_SIGMA * sum / count;
  }

  /** The standard deviation as the median absolute value of a part of the pixels tells it. */
  private double medianScale(float[] values) {
    int across = width - 2 * margin;
    int pixels = across * (height - 2 * margin);
    int used = 0;
    for (int next = 0; next < pixels; next += stride) {
      int at = (margin + next / across) * width + margin + next % across;
      sorted[used++] = Math.abs(values[at]);
    }
    return MEDIAN_ABSOLUTE_TO_SIGMA * Selection.median(sorted, used);
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
