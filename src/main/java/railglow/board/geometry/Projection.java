package railglow.board.geometry;

/**
 * Board millimetres to picture pixels: a homography, then one radial term of the lens.
 *
 * <p>In scaled coordinates u of the board and p of the picture: q = H u, p = c + (q - c)(1 + k |q -
 * c|^2), c the optical centre. Immutable; arrays are not handed out.
 *
 * @param board scaling of the millimetres
 * @param picture scaling of the pixels
 * @param parameters h11 h12 h13 h21 h22 h23 h31 h32 (h33 = 1), then k
 * @param centreU optical centre in scaled pixels
 * @param centreV likewise
 */
record Projection(
    Scaling board, Scaling picture, double[] parameters, double centreU, double centreV) {
  static final int HOMOGRAPHY_PARAMETERS = 8;
  static final int RADIAL = 8;
  private static final int NEWTON_STEPS = 25;
  private static final double STEP = 1e-6;

  Projection with(double[] changed) {
    return new Projection(board, picture, changed, centreU, centreV);
  }

  /** Scaled pixel of a scaled board point. */
  double[] scaled(double u, double v) {
    double[] h = parameters;
    double w = h[6] * u + h[7] * v + 1;
    double a = (h[0] * u + h[1] * v + h[2]) / w - centreU;
    double b = (h[3] * u + h[4] * v + h[5]) / w - centreV;
    double stretch = 1 + h[RADIAL] * (a * a + b * b);
    return new double[] {centreU + a * stretch, centreV + b * stretch};
  }

  double[] toPixel(double x, double y) {
    double[] u = board.apply(x, y);
    double[] p = scaled(u[0], u[1]);
    return picture.undo(p[0], p[1]);
  }

  /** d(column, row) / d(x, y) at a board point, row by row. */
  double[] jacobian(double x, double y) {
    double step = STEP / board.factor();
    double[] right = toPixel(x + step, y);
    double[] left = toPixel(x - step, y);
    double[] up = toPixel(x, y + step);
    double[] down = toPixel(x, y - step);
    return new double[] {
      (right[0] - left[0]) / (2 * step),
      (up[0] - down[0]) / (2 * step),
      (right[1] - left[1]) / (2 * step),
      (up[1] - down[1]) / (2 * step)
    };
  }

  /** The board point a pixel shows: the homography's inverse, then Newton for the lens term. */
  double[] toBoard(double column, double row) {
    double[] p = picture.apply(column, row);
    double[] u = inverse(p[0], p[1]);
    double[] at = board.undo(u[0], u[1]);
    if (parameters[RADIAL] == 0) {
      return at;
    }
    for (int i = 0; i < NEWTON_STEPS; i++) {
      double[] seen = toPixel(at[0], at[1]);
      double[] j = jacobian(at[0], at[1]);
      double determinant = j[0] * j[3] - j[1] * j[2];
      double dc = column - seen[0];
      double dr = row - seen[1];
      at[0] += (j[3] * dc - j[1] * dr) / determinant;
      at[1] += (j[0] * dr - j[2] * dc) / determinant;
    }
    return at;
  }

  private double[] inverse(double p, double q) {
    double[] h = parameters;
    // Two linear equations in u and v: (h1 - p h3) . (u, v, 1) = 0 and (h2 - q h3) . (u, v, 1) = 0.
    double a = h[0] - p * h[6];
    double b = h[1] - p * h[7];
    double c = p - h[2];
    double d = h[3] - q * h[6];
    double e = h[4] - q * h[7];
    double f = q - h[5];
    double determinant = a * e - b * d;
    return new double[] {(c * e - b * f) / determinant, (a * f - c * d) / determinant};
  }
}
