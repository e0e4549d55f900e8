package railglow.board.geometry;

/**
 * A rectangle on the board, turned about its centre. Immutable.
 *
 * @param widthMillimetres before turning
 * @param rotationDegrees counter-clockwise
 */
public record Outline(
    double xMillimetres,
    double yMillimetres,
    double widthMillimetres,
    double heightMillimetres,
    double rotationDegrees) {
  /** Half the side of the grid the share of an ellipse is summed on, and its reach in sigmas. */
  private static final int HALF_GRID = 40;

  private static final double REACH_SIGMAS = 4;
  private static final double EDGE = 1.0 / 3;

  /** The four corners, in order around the rectangle: x0, y0, x1, y1 and so on. */
  public double[] corners() {
    double cos = StrictMath.cos(StrictMath.toRadians(rotationDegrees));
    double sin = StrictMath.sin(StrictMath.toRadians(rotationDegrees));
    double w = widthMillimetres / 2;
    double h = heightMillimetres / 2;
    double[] alongX = {-w, w, w, -w};
    double[] alongY = {-h, -h, h, h};
    double[] corners = new double[8];
    for (int i = 0; i < 4; i++) {
      corners[2 * i] = xMillimetres + alongX[i] * cos - alongY[i] * sin;
      corners[2 * i + 1] = yMillimetres + alongX[i] * sin + alongY[i] * cos;
    }
    return corners;
  }

  public boolean contains(double x, double y) {
    double cos = StrictMath.cos(StrictMath.toRadians(rotationDegrees));
    double sin = StrictMath.sin(StrictMath.toRadians(rotationDegrees));
    double dx = x - xMillimetres;
    double dy = y - yMillimetres;
    return Math.abs(dx * cos + dy * sin) <= widthMillimetres / 2
        && Math.abs(dy * cos - dx * sin) <= heightMillimetres / 2;
  }

  /**
   * Which part of the rectangle a point is nearest to as seen from above, in words: its middle, an
   * edge or a corner. Each is a third of the sides.
   */
  public String area(double x, double y) {
    double[] corners = corners();
    double halfX = 0;
    double halfY = 0;
    for (int i = 0; i < 4; i++) {
      halfX = Math.max(halfX, Math.abs(corners[2 * i] - xMillimetres));
      halfY = Math.max(halfY, Math.abs(corners[2 * i + 1] - yMillimetres));
    }
    double u = (x - xMillimetres) / halfX;
    double v = (y - yMillimetres) / halfY;
    String vertical = v > EDGE ? "upper" : v < -EDGE ? "lower" : "";
    String horizontal = u > EDGE ? "right" : u < -EDGE ? "left" : "";
    if (vertical.isEmpty() && horizontal.isEmpty()) {
      return "at its middle";
    }
    return vertical.isEmpty() || horizontal.isEmpty()
        ? "at its " + vertical + horizontal + " edge"
        : "at its " + vertical + " " + horizontal + " corner";
  }

  /** Distance from a point to the outline; 0 inside. */
  public double distanceMillimetres(double x, double y) {
    return contains(x, y) ? 0 : distanceToEdges(corners(), x, y);
  }

  /**
   * Distance from a position to the outline in standard deviations of the position (Mahalanobis
   * distance to the nearest point of the rectangle); 0 inside. Infinite for a position without
   * error outside.
   */
  public double distanceSigmas(BoardPosition position) {
    if (contains(position.xMillimetres(), position.yMillimetres())) {
      return 0;
    }
    double[] whitened = whitened(position);
    return whitened == null ? Double.POSITIVE_INFINITY : distanceToEdges(whitened, 0, 0);
  }

  /**
   * The share of a position's normal distribution that lies on the rectangle, 0 to 1, by a sum over
   * a fixed grid.
   */
  public double shareOf(BoardPosition position) {
    double[] factor = factor(position);
    if (factor == null) {
      return contains(position.xMillimetres(), position.yMillimetres()) ? 1 : 0;
    }
    double on = 0;
    double all = 0;
    for (int i = -HALF_GRID; i <= HALF_GRID; i++) {
      for (int j = -HALF_GRID; j <= HALF_GRID; j++) {
        double u = i * REACH_SIGMAS / HALF_GRID;
        double v = j * REACH_SIGMAS / HALF_GRID;
        double weight = StrictMath.exp(-(u * u + v * v) / 2);
        all += weight;
        if (contains(
            position.xMillimetres() + factor[0] * u,
            position.yMillimetres() + factor[1] * u + factor[2] * v)) {
          on += weight;
        }
      }
    }
    return on / all;
  }

  /** Lower Cholesky factor of the covariance: xx, yx, yy; null when it is not positive. */
  private static double[] factor(BoardPosition position) {
    double xx = Math.sqrt(position.xVariance());
    double yx = position.covariance() / xx;
    double rest = position.yVariance() - yx * yx;
    return xx > 0 && rest > 0 ? new double[] {xx, yx, Math.sqrt(rest)} : null;
  }

  /** The corners in units of the position's errors, seen from the position. */
  private double[] whitened(BoardPosition position) {
    double[] factor = factor(position);
    if (factor == null) {
      return null;
    }
    double[] corners = corners();
    for (int i = 0; i < 4; i++) {
      double u = (corners[2 * i] - position.xMillimetres()) / factor[0];
      double v = (corners[2 * i + 1] - position.yMillimetres() - factor[1] * u) / factor[2];
      corners[2 * i] = u;
      corners[2 * i + 1] = v;
    }
    return corners;
  }

  private static double distanceToEdges(double[] corners, double x, double y) {
    double nearest = Double.POSITIVE_INFINITY;
    for (int i = 0; i < 4; i++) {
      int next = (i + 1) % 4;
      double ax = corners[2 * i];
      double ay = corners[2 * i + 1];
      double ex = corners[2 * next] - ax;
      double ey = corners[2 * next + 1] - ay;
      double length = ex * ex + ey * ey;
      double along = length == 0 ? 0 : ((x - ax) * ex + (y - ay) * ey) / length;
      along = Math.max(0, Math.min(1, along));
      nearest = Math.min(nearest, Math.hypot(ax + along * ex - x, ay + along * ey - y));
    }
    return nearest;
  }
}
