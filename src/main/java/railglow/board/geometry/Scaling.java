package railglow.board.geometry;

/**
 * Moves points to their mean and scales them to a mean distance of sqrt(2), which keeps the linear
 * fit well conditioned (Hartley, In defense of the eight-point algorithm, IEEE PAMI 19, 1997).
 */
record Scaling(double centreX, double centreY, double factor) {
  /** Of points given as x0, y0, x1, y1 and so on; factor 1 when all are the same point. */
  static Scaling of(double[] points) {
    int n = points.length / 2;
    double x = 0;
    double y = 0;
    for (int i = 0; i < n; i++) {
      x += points[2 * i] / n;
      y += points[2 * i + 1] / n;
    }
    double distance = 0;
    for (int i = 0; i < n; i++) {
      distance += Math.hypot(points[2 * i] - x, points[2 * i + 1] - y) / n;
    }
    return new Scaling(x, y, distance > 0 ? Math.sqrt(2) / distance : 1);
  }

  double[] apply(double x, double y) {
    return new double[] {(x - centreX) * factor, (y - centreY) * factor};
  }

  double[] undo(double u, double v) {
    return new double[] {u / factor + centreX, v / factor + centreY};
  }
}
