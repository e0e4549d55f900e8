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

  /** A pixel's weight goes from 1 to 0 within this part of the limit below it. */
  private static final float SHARPNESS = 1e6f;

  private final int width;
  private final int height;
  private final int margin;
  private final float[] rowMeans;
  private final float[] columns;
  private final float[] columnWeights;
  private final float[][] weights;
  private final float[] sorted;
  private final int stride;

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
    this.columnWeights = new float[width];
    this.weights = newPlane();
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
   */
  void centreWithoutOutliers(float[][] values, double limitInScales) {
    centre(values);
    float most = (float) (limitInScales * medianScale(values));
    float sharp = SHARPNESS / Math.max(most, Float.MIN_NORMAL * SHARPNESS);
    Arrays.fill(columns, 0);
    Arrays.fill(columnWeights, 0);
    double all = 0;
    double used = 0;
    for (int row = 0; row < height; row++) {
      weigh(values[row], most, sharp, weights[row]);
      multiply(values[row], weights[row]);
      add(columns, values[row]);
      add(columnWeights, weights[row]);
      float sum = sum(values[row]);
      float weight = sum(weights[row]);
      rowMeans[row] = weight == 0 ? 0 : sum / weight;
      all += sum;
      used += weight;
    }
    float mean = used == 0 ? 0 : (float) (all / used);
    for (int x = 0; x < width; x++) {
      columns[x] = (columnWeights[x] == 0 ? 0 : columns[x] / columnWeights[x]) - mean;
    }
    for (int row = 0; row < height; row++) {
      subtractRow(values[row], columns, rowMeans[row]);
      multiply(values[row], weights[row]);
    }
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

  /**
   * 1 below the limit and 0 from it on, without a comparison, of which the compiler makes no
   * vectors: t + |t| is twice the larger of t and 0.
   */
  private static void weigh(float[] values, float most, float sharp, float[] into) {
    for (int x = 0; x < into.length; x++) {
      float below = most - Math.abs(values[x]);
      float missing = 1 - (below + Math.abs(below)) * sharp;
      into[x] = 1 - (missing + Math.abs(missing)) / 2;
    }
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

  private static void addProducts(float[] sums, float[] one, float[] other) {
    for (int x = 0; x < sums.length; x++) {
      sums[x] += one[x] * other[x];
    }
  }

  private static void multiply(float[] row, float[] factors) {
    for (int x = 0; x < row.length; x++) {
      row[x] *= factors[x];
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
