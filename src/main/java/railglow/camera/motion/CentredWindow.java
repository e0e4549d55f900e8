package railglow.camera.motion;

import java.util.Arrays;
import railglow.thermal.Selection;

/**
 * An image without its margin, as rows of their own (decision 0090): sums over it, and what is left
 * after every row's and every column's own mean was taken out. Sums are taken column by column, in
 * floats, and then across: additions of whole rows become vector code, and no chain is longer than
 * the window is high. Allocates nothing per image. Not thread-safe.
 */
final class CentredWindow {
  private static final int SPARSE = 3;
  private static final int ENOUGH = 2000;
  private static final double MEAN_ABSOLUTE_TO_SIGMA = 1.2533;
  private static final double MEDIAN_ABSOLUTE_TO_SIGMA = 1.4826;

  private final int width;
  private final int height;
  private final int margin;
  private final float[] rowMeans;
  private final float[] columns;
  private final int[] columnCounts;
  private final float[] peaks;
  private final int[] suspects;
  private final int[] places;
  private final float[] sorted;
  private final int stride;
  private int outliers;

  /**
   * @param imageWidth with margins
   * @param imageHeight with margins
   */
  CentredWindow(int imageWidth, int imageHeight, int margin) {
    this.width = imageWidth - 2 * margin;
    this.height = imageHeight - 2 * margin;
    this.margin = margin;
    this.rowMeans = new float[height];
    this.columns = new float[width];
    this.columnCounts = new int[width];
    this.peaks = new float[width];
    this.suspects = new int[width];
    this.places = new int[width * height];
    this.stride = Math.max(1, width * height / ENOUGH) | 1;
    this.sorted = new float[width * height / stride + 1];
  }

  /** Room for one window. */
  float[][] newPlane() {
    return new float[height][width];
  }

  /** A window's worth of an image, less a common value that keeps the floats' digits. */
  float[][] cut(float[][] image) {
    float common = image[margin][margin];
    float[][] window = newPlane();
    for (int row = 0; row < height; row++) {
      for (int x = 0; x < width; x++) {
        window[row][x] = image[margin + row][margin + x] - common;
      }
    }
    return window;
  }

  static void subtract(float[][] from, float[][] values) {
    for (int row = 0; row < from.length; row++) {
      subtractRow(from[row], values[row]);
    }
  }

  /** Takes row and column means out. */
  void centre(float[][] values) {
    Arrays.fill(columns, 0);
    double all = 0;
    for (int row = 0; row < height; row++) {
      add(columns, values[row]);
      rowMeans[row] = sum(values[row]) / width;
      all += rowMeans[row];
    }
    float mean = (float) (all / height);
    for (int x = 0; x < width; x++) {
      columns[x] = columns[x] / height - mean;
    }
    for (int row = 0; row < height; row++) {
      subtractRow(values[row], columns, rowMeans[row]);
    }
  }

  /**
   * As {@link #centre}, then once more without the pixels that stand out by more than the limit;
   * those become zero. So a heat source neither counts nor pulls its rows and columns along.
   *
   * <p>After the first time rows and columns add up to nothing, so what those without some pixels
   * add up to follows from these pixels alone, which are few.
   */
  void centreWithoutOutliers(float[][] values, double limitInScales) {
    centre(values);
    float most = (float) (limitInScales * medianScale(values));
    int columnsToTry = findColumnsBeyond(most, values);
    Arrays.fill(columns, 0);
    Arrays.fill(columnCounts, 0);
    outliers = 0;
    double all = 0;
    for (int row = 0; row < height; row++) {
      int before = outliers;
      float out = takeOutliers(values[row], row * width, columnsToTry, most);
      int used = width - (outliers - before);
      rowMeans[row] = used == 0 ? 0 : -out / used;
      all -= out;
    }
    int used = width * height - outliers;
    float mean = used == 0 ? 0 : (float) (all / used);
    for (int x = 0; x < width; x++) {
      int rows = height - columnCounts[x];
      columns[x] = (rows == 0 ? 0 : -columns[x] / rows) - mean;
    }
    for (int row = 0; row < height; row++) {
      subtractRow(values[row], columns, rowMeans[row]);
    }
    for (int k = 0; k < outliers; k++) {
      values[places[k] / width][places[k] % width] = 0;
    }
  }

  /** Leaves the columns in which anything stands out, from the left; returns how many. */
  private int findColumnsBeyond(float most, float[][] values) {
    Arrays.fill(peaks, 0);
    for (float[] row : values) {
      keepLargest(peaks, row);
    }
    int found = 0;
    for (int x = 0; x < width; x++) {
      if (!(peaks[x] <= most)) {
        suspects[found++] = x;
      }
    }
    return found;
  }

  /** Notes a row's outliers; returns their sum. */
  private float takeOutliers(float[] row, int start, int columnsToTry, float most) {
    float sum = 0;
    for (int k = 0; k < columnsToTry; k++) {
      int x = suspects[k];
      if (!(Math.abs(row[x]) <= most)) {
        sum += row[x];
        columns[x] += row[x];
        columnCounts[x]++;
        places[outliers++] = start + x;
      }
    }
    return sum;
  }

  double product(float[][] one, float[][] other) {
    Arrays.fill(columns, 0);
    for (int row = 0; row < height; row++) {
      addProducts(columns, one[row], other[row]);
    }
    return acrossColumns();
  }

  /**
   * The standard deviation as the mean absolute value tells it, less moved by a few wild pixels.
   */
  double robustScale(float[][] values) {
    Arrays.fill(columns, 0);
    for (float[] row : values) {
      addAbsolute(columns, row);
    }
    return MEAN_ABSOLUTE_TO_SIGMA * acrossColumns() / (width * height);
  }

  private double acrossColumns() {
    double sum = 0;
    for (float column : columns) {
      sum += column;
    }
    return sum;
  }

  /** The standard deviation as the median absolute value of a part of the pixels tells it. */
  private double medianScale(float[][] values) {
    int used = 0;
    int x = 0;
    int row = 0;
    while (row < height) {
      sorted[used++] = Math.abs(values[row][x]);
      x += stride;
      while (x >= width) {
        x -= width;
        row++;
      }
    }
    return MEDIAN_ABSOLUTE_TO_SIGMA * Selection.median(sorted, used);
  }

  /** Between an image moved by whole pixels and a window, on every third pixel. */
  double meanAbsoluteDifference(float[][] image, int dx, int dy, float[][] window) {
    double offset = 0;
    int count = 0;
    for (int row = 0; row < height; row += SPARSE) {
      float[] line = image[margin + row + dy];
      for (int x = 0; x < width; x += SPARSE) {
        offset += line[margin + x + dx] - window[row][x];
        count++;
      }
    }
    offset /= count;
    double sum = 0;
    for (int row = 0; row < height; row += SPARSE) {
      float[] line = image[margin + row + dy];
      for (int x = 0; x < width; x += SPARSE) {
        sum += Math.abs(line[margin + x + dx] - window[row][x] - offset);
      }
    }
    return sum / count;
  }

  private static void add(float[] sums, float[] row) {
    for (int x = 0; x < sums.length; x++) {
      sums[x] += row[x];
    }
  }

  private static void addAbsolute(float[] sums, float[] row) {
    for (int x = 0; x < sums.length; x++) {
      sums[x] += Math.abs(row[x]);
    }
  }

  private static void keepLargest(float[] largest, float[] row) {
    for (int x = 0; x < largest.length; x++) {
      largest[x] = Math.max(largest[x], Math.abs(row[x]));
    }
  }

  private static void addProducts(float[] sums, float[] one, float[] other) {
    for (int x = 0; x < sums.length; x++) {
      sums[x] += one[x] * other[x];
    }
  }

  private static void subtractRow(float[] row, float[] values) {
    for (int x = 0; x < row.length; x++) {
      row[x] -= values[x];
    }
  }

  private static void subtractRow(float[] row, float[] values, float common) {
    for (int x = 0; x < row.length; x++) {
      row[x] -= values[x] + common;
    }
  }

  /** In eight chains, for one waits for every addition before the next. */
  private static float sum(float[] row) {
    float a = 0;
    float b = 0;
    float c = 0;
    float d = 0;
    float e = 0;
    float f = 0;
    float g = 0;
    float h = 0;
    int x = 0;
    for (; x + 7 < row.length; x += 8) {
      a += row[x];
      b += row[x + 1];
      c += row[x + 2];
      d += row[x + 3];
      e += row[x + 4];
      f += row[x + 5];
      g += row[x + 6];
      h += row[x + 7];
    }
    for (; x < row.length; x++) {
      a += row[x];
    }
    return ((a + b) + (c + d)) + ((e + f) + (g + h));
  }
}
