package railglow.thermal.inverse;

/**
 * A part of a picture.
 *
 * @param left first column
 * @param top first row
 */
public record Window(int left, int top, int width, int height) {
  /** Heat spreads by some millimetres in a period; a picture's pixel is some tenths of one. */
  private static final int MARGIN = 40;

  private static final int LARGEST = 200;

  public int pixels() {
    return width * height;
  }

  public boolean holds(double column, double row) {
    return column > left - 0.5
        && column < left + width - 0.5
        && row > top - 0.5
        && row < top + height - 0.5;
  }

  /**
   * The part around the first place and all further ones that do not make it too large, with a
   * margin as far as the picture goes.
   */
  static Window around(double[] columns, double[] rows, int pictureWidth, int pictureHeight) {
    Window window = null;
    for (int i = 0; i < columns.length; i++) {
      int x = (int) Math.round(Math.max(0, Math.min(pictureWidth - 1, columns[i])));
      int y = (int) Math.round(Math.max(0, Math.min(pictureHeight - 1, rows[i])));
      int left = Math.max(0, x - MARGIN);
      int top = Math.max(0, y - MARGIN);
      int right = Math.min(pictureWidth, x + MARGIN + 1);
      int bottom = Math.min(pictureHeight, y + MARGIN + 1);
      if (window != null) {
        left = Math.min(left, window.left);
        top = Math.min(top, window.top);
        right = Math.max(right, window.left + window.width);
        bottom = Math.max(bottom, window.top + window.height);
      }
      Window wider = new Window(left, top, right - left, bottom - top);
      if (window == null || Math.max(wider.width, wider.height) <= LARGEST) {
        window = wider;
      }
    }
    return window;
  }
}
