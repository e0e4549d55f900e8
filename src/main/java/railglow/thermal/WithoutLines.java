package railglow.thermal;

import java.util.Arrays;

/**
 * A plane without the medians of its warm columns and then of its warm rows. A row's is only known
 * once one of its pixels is asked for. Not thread-safe.
 */
final class WithoutLines {
  /** Columns at a time: their pixels in a row lie in one line of the cache. */
  private static final int BLOCK = 16;

  private final float[] plane;
  private final int width;
  private final float[] ofColumn;
  private final float[] ofRow;

  /**
   * @param plane kept, not changed
   */
  WithoutLines(float[] plane, int width, int height) {
    this.plane = plane;
    this.width = width;
    ofColumn = new float[width];
    ofRow = new float[height];
    Arrays.fill(ofRow, Float.NaN);
    float[][] columns = new float[BLOCK][height];
    for (int left = 0; left < width; left += BLOCK) {
      int n = Math.min(BLOCK, width - left);
      for (int row = 0; row < height; row++) {
        for (int k = 0; k < n; k++) {
          columns[k][row] = plane[row * width + left + k];
        }
      }
      for (int k = 0; k < n; k++) {
        ofColumn[left + k] = warm(columns[k]);
      }
    }
  }

  /** The median of a line, 0 where it is not above that. */
  private static float warm(float[] line) {
    int above = 0;
    for (float value : line) {
      above += value > 0 ? 1 : 0;
    }
    // the median is the upper one
    return above < line.length - line.length / 2 ? 0 : Selection.median(line, line.length);
  }

  float at(int pixel) {
    int row = pixel / width;
    if (Float.isNaN(ofRow[row])) {
      float[] line = new float[width];
      for (int x = 0; x < width; x++) {
        line[x] = plane[row * width + x] - ofColumn[x];
      }
      ofRow[row] = warm(line);
    }
    return plane[pixel] - ofColumn[pixel % width] - ofRow[row];
  }
}
