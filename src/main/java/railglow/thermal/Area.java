package railglow.thermal;

/**
 * A rectangle of a plane's pixels; right and bottom are the first ones outside. Immutable.
 *
 * @param left first column
 * @param top first row
 * @param right column after the last
 * @param bottom row after the last
 */
record Area(int left, int top, int right, int bottom) {
  static Area whole(int width, int height) {
    return new Area(0, 0, width, height);
  }

  /** So many pixels more on every side, as far as the picture reaches. */
  Area grown(int by, int width, int height) {
    return new Area(
        Math.max(0, left - by),
        Math.max(0, top - by),
        Math.min(width, right + by),
        Math.min(height, bottom + by));
  }

  int columns() {
    return right - left;
  }
}
