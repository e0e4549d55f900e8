package railglow.sim.picture;

/**
 * The true projection from the board to the picture: a homography. Board coordinates are
 * millimetres, x right, y up, origin at the lower left corner; picture coordinates are (column,
 * row) in pixels, integers at pixel centres, row 0 at the top. Immutable.
 */
public final class BoardView {
  private final double[] forward;
  private final double[] backward;

  /**
   * The nine numbers of the matrix row by row: (u, v, w) = M (x, y, 1), column = u/w, row = v/w.
   */
  public BoardView(double... matrix) {
    if (matrix.length != 9) {
      throw new IllegalArgumentException("a projection has 9 numbers, not " + matrix.length);
    }
    forward = matrix.clone();
    backward = inverse(forward);
  }

  /** Straight from above: the board's corner (0, 0) at the given pixel, y upwards. */
  public static BoardView fromAbove(
      double pixelsPerMillimetre, double originColumn, double originRow) {
    double s = pixelsPerMillimetre;
    return new BoardView(s, 0, originColumn, 0, -s, originRow, 0, 0, 1);
  }

  public double[] matrix() {
    return forward.clone();
  }

  public double column(double xMillimetres, double yMillimetres) {
    return project(forward, xMillimetres, yMillimetres, 0);
  }

  public double row(double xMillimetres, double yMillimetres) {
    return project(forward, xMillimetres, yMillimetres, 1);
  }

  public double xMillimetres(double column, double row) {
    return project(backward, column, row, 0);
  }

  public double yMillimetres(double column, double row) {
    return project(backward, column, row, 1);
  }

  private static double project(double[] m, double x, double y, int axis) {
    double w = m[6] * x + m[7] * y + m[8];
    return (m[3 * axis] * x + m[3 * axis + 1] * y + m[3 * axis + 2]) / w;
  }

  /** The adjugate; a homography needs no division by the determinant. */
  private static double[] inverse(double[] m) {
    double[] adjugate = {
      m[4] * m[8] - m[5] * m[7], m[2] * m[7] - m[1] * m[8], m[1] * m[5] - m[2] * m[4],
      m[5] * m[6] - m[3] * m[8], m[0] * m[8] - m[2] * m[6], m[2] * m[3] - m[0] * m[5],
      m[3] * m[7] - m[4] * m[6], m[1] * m[6] - m[0] * m[7], m[0] * m[4] - m[1] * m[3]
    };
    double determinant = m[0] * adjugate[0] + m[1] * adjugate[3] + m[2] * adjugate[6];
    if (determinant == 0) {
      throw new IllegalArgumentException("this projection squashes the board to a line");
    }
    return adjugate;
  }
}
