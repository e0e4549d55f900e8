package railglow.board.geometry;

import java.util.List;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.EigenDecomposition;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;

/**
 * Least squares fit of a {@link Projection}: the normalised direct linear transformation (Hartley
 * and Zisserman, Multiple View Geometry, 2nd ed., algorithm 4.2) as the start, then Gauss-Newton on
 * the pixel residuals. Pure.
 *
 * @param projection the best fit
 * @param covariance of its parameters for unit scaled-pixel variance
 * @param sumOfSquares of the residuals, px^2
 */
record ProjectionFit(Projection projection, RealMatrix covariance, double sumOfSquares) {
  private static final int STEPS = 12;
  private static final double DIFFERENCE = 1e-6;

  /**
   * The share of the largest singular value below which the second smallest counts as zero: then
   * the points leave more than one map open.
   */
  private static final double DEGENERATE = 2e-3;

  /** Fits with or without the lens term; the optical centre is in pixels. */
  static ProjectionFit of(
      List<RegistrationPoint> points, boolean lens, double centreColumn, double centreRow) {
    double[] boardPoints = new double[2 * points.size()];
    double[] pixels = new double[2 * points.size()];
    for (int i = 0; i < points.size(); i++) {
      boardPoints[2 * i] = points.get(i).xMillimetres();
      boardPoints[2 * i + 1] = points.get(i).yMillimetres();
      pixels[2 * i] = points.get(i).column();
      pixels[2 * i + 1] = points.get(i).row();
    }
    Scaling board = Scaling.of(boardPoints);
    Scaling picture = Scaling.of(pixels);
    double[] centre = picture.apply(centreColumn, centreRow);
    double[] u = scaled(board, boardPoints);
    double[] p = scaled(picture, pixels);
    Projection start = new Projection(board, picture, linear(u, p), centre[0], centre[1]);
    return refined(start, u, p, lens ? 9 : Projection.HOMOGRAPHY_PARAMETERS);
  }

  private static double[] scaled(Scaling scaling, double[] points) {
    double[] result = new double[points.length];
    for (int i = 0; i < points.length; i += 2) {
      double[] point = scaling.apply(points[i], points[i + 1]);
      result[i] = point[0];
      result[i + 1] = point[1];
    }
    return result;
  }

  private static double[] linear(double[] u, double[] p) {
    RealMatrix a = new Array2DRowRealMatrix(u.length, 9);
    for (int i = 0; i < u.length; i += 2) {
      double x = u[i];
      double y = u[i + 1];
      a.setRow(i, new double[] {x, y, 1, 0, 0, 0, -p[i] * x, -p[i] * y, -p[i]});
      a.setRow(i + 1, new double[] {0, 0, 0, x, y, 1, -p[i + 1] * x, -p[i + 1] * y, -p[i + 1]});
    }
    EigenDecomposition eigen = new EigenDecomposition(a.transpose().multiply(a));
    double[] values = eigen.getRealEigenvalues();
    double secondSmallest = Math.sqrt(Math.max(0, values[7]) / values[0]);
    RealVector h = eigen.getEigenvector(8);
    double last = h.getEntry(8);
    if (!(secondSmallest > DEGENERATE) || Math.abs(last) < 1e-6 * h.getNorm()) {
      throw new RegistrationException(
          "the points lie on one line or nearly so, or all but one do: they leave the picture's place"
              + " open; measure points near the board's corners");
    }
    double[] parameters = new double[9];
    for (int i = 0; i < Projection.HOMOGRAPHY_PARAMETERS; i++) {
      parameters[i] = h.getEntry(i) / last;
    }
    return parameters;
  }

  private static ProjectionFit refined(Projection start, double[] u, double[] p, int free) {
    Projection best = start;
    double bestSquares = squares(best, u, p);
    RealMatrix normal = null;
    for (int step = 0; step < STEPS; step++) {
      RealMatrix j = jacobian(best, u, free);
      normal = j.transpose().multiply(j);
      RealVector change =
          new LUDecomposition(normal, 1e-14)
              .getSolver()
              .solve(j.transpose().operate(residuals(best, u, p)));
      double[] parameters = best.parameters().clone();
      for (int k = 0; k < free; k++) {
        parameters[k] += change.getEntry(k);
      }
      Projection next = best.with(parameters);
      double squares = squares(next, u, p);
      if (!(squares < bestSquares)) {
        break;
      }
      best = next;
      bestSquares = squares;
    }
    RealMatrix covariance = new LUDecomposition(normal, 1e-14).getSolver().getInverse();
    double perPixel = best.picture().factor();
    return new ProjectionFit(best, covariance, bestSquares / (perPixel * perPixel));
  }

  private static RealVector residuals(Projection projection, double[] u, double[] p) {
    double[] residuals = new double[u.length];
    for (int i = 0; i < u.length; i += 2) {
      double[] seen = projection.scaled(u[i], u[i + 1]);
      residuals[i] = p[i] - seen[0];
      residuals[i + 1] = p[i + 1] - seen[1];
    }
    return new ArrayRealVector(residuals, false);
  }

  private static double squares(Projection projection, double[] u, double[] p) {
    RealVector residuals = residuals(projection, u, p);
    return residuals.dotProduct(residuals);
  }

  /** d(scaled pixels) / d(parameters) for all points, by central differences. */
  static RealMatrix jacobian(Projection projection, double[] u, int free) {
    RealMatrix j = new Array2DRowRealMatrix(u.length, free);
    for (int k = 0; k < free; k++) {
      double[] plus = projection.parameters().clone();
      double[] minus = projection.parameters().clone();
      plus[k] += DIFFERENCE;
      minus[k] -= DIFFERENCE;
      Projection above = projection.with(plus);
      Projection below = projection.with(minus);
      for (int i = 0; i < u.length; i += 2) {
        double[] high = above.scaled(u[i], u[i + 1]);
        double[] low = below.scaled(u[i], u[i + 1]);
        j.setEntry(i, k, (high[0] - low[0]) / (2 * DIFFERENCE));
        j.setEntry(i + 1, k, (high[1] - low[1]) / (2 * DIFFERENCE));
      }
    }
    return j;
  }
}
