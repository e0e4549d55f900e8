package railglow.thermal;

/** Reads a plane column by column without going through all of its memory for each. Stateless. */
final class Columns {
  /** Columns at a time: their pixels in a row lie in one line of the cache. */
  private static final int BLOCK = 16;

  private Columns() {}

  /** Gets one column after the other, from the left. */
  interface Taker {
    /**
     * @param values from the top; the taker's until the next
     */
    void take(int column, float[] values);
  }

  /**
   * @param plane row by row, at least width x height; not changed
   */
  static void each(float[] plane, int width, int height, Taker taker) {
    float[][] columns = new float[BLOCK][height];
    for (int left = 0; left < width; left += BLOCK) {
      int n = Math.min(BLOCK, width - left);
      for (int row = 0; row < height; row++) {
        for (int k = 0; k < n; k++) {
          columns[k][row] = plane[row * width + left + k];
        }
      }
      for (int k = 0; k < n; k++) {
        taker.take(left + k, columns[k]);
      }
    }
  }
}
