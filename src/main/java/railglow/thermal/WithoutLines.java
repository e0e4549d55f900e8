package railglow.thermal;

import java.util.Arrays;

/**
 * A plane without the medians of its warm columns and then of its warm rows. A row's is only known
 * once one of its pixels is asked for. Not thread-safe.
 */
final class WithoutLines {
  /** Most lines that cross no heat have their medians within so many times their pixels' noise. */
  private static final double LIKELY = 0.5;

  private final float[] plane;
  private final int width;
  private final float[] ofColumn;
  private final float[] ofRow;
  private final float likely;

  /**
   * @param plane kept, not changed
   * @param noise of its pixels
   */
  WithoutLines(float[] plane, int width, int height, double noise) {
    this.plane = plane;
    this.width = width;
    likely = (float) (LIKELY * noise);
    ofColumn = new float[width];
    ofRow = new float[height];
    Arrays.fill(ofRow, Float.NaN);
    Columns.each(plane, width, height, (x, values) -> ofColumn[x] = warm(values));
  }

  /** The median of a line, 0 where it is not above that. */
  private float warm(float[] line) {
    int above = 0;
    for (float value : line) {
      above += value > 0 ? 1 : 0;
    }
    // the median is the upper one
    return above < line.length - line.length / 2
        ? 0
        : Selection.medianAbout(line, line.length, Float.MIN_VALUE, likely);
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
