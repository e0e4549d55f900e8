package railglow.camera;

/**
 * How the stored image must be laid to look like the scene: mirrored first, then turned.
 *
 * @param mirror applied to the image as stored
 * @param turn clockwise, applied after the mirror
 */
public record Orientation(Mirror mirror, Turn turn) {
  public static final Orientation AS_STORED = new Orientation(Mirror.NONE, Turn.NONE);

  /** Which sides are swapped. */
  public enum Mirror {
    NONE,
    LEFT_RIGHT,
    UP_DOWN
  }

  /** How far the image is turned clockwise. */
  public enum Turn {
    NONE,
    QUARTER,
    HALF,
    THREE_QUARTERS
  }

  /** Whether width and height change places. */
  public boolean swapsSides() {
    return turn == Turn.QUARTER || turn == Turn.THREE_QUARTERS;
  }

  /** Where pixel (column, row) of a stored image goes, as a flat index of the laid image. */
  public int target(int column, int row, int storedWidth, int storedHeight) {
    int x = mirror == Mirror.LEFT_RIGHT ? storedWidth - 1 - column : column;
    int y = mirror == Mirror.UP_DOWN ? storedHeight - 1 - row : row;
    return switch (turn) {
      case NONE -> y * storedWidth + x;
      case QUARTER -> x * storedHeight + (storedHeight - 1 - y);
      case HALF -> (storedHeight - 1 - y) * storedWidth + (storedWidth - 1 - x);
      case THREE_QUARTERS -> (storedWidth - 1 - x) * storedHeight + y;
    };
  }
}
