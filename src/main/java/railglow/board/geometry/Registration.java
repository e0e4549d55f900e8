package railglow.board.geometry;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * Ties a thermal picture to the board: pixels to millimetres and back, with the error of the tie
 * itself. Immutable and thread-safe; the same points give the same bits.
 */
public final class Registration {
  public static final int LEAST_POINTS = 4;

  private final List<RegistrationPoint> points;
  private final Projection projection;
  private final RealMatrix covariance;
  private final int freeParameters;
  private final double pixelSigma;
  private final double sumOfSquares;

  private Registration(
      List<RegistrationPoint> points, ProjectionFit fit, int freeParameters, double statedSigma) {
    this.points = List.copyOf(points);
    this.projection = fit.projection();
    this.covariance = fit.covariance();
    this.freeParameters = freeParameters;
    this.sumOfSquares = fit.sumOfSquares();
    int freedom = degreesOfFreedom();
    double seen = freedom > 0 ? Math.sqrt(sumOfSquares / freedom) : 0;
    this.pixelSigma = Math.max(statedSigma, seen);
  }

  /**
   * Fits a homography to four points or more.
   *
   * @param pixelSigma how well each point was measured in the picture, px; used when the residuals
   *     say no worse
   * @throws RegistrationException for fewer than four points, points on one line, or numbers that
   *     are not finite
   */
  public static Registration of(List<RegistrationPoint> points, double pixelSigma) {
    requireUsable(points, pixelSigma);
    return new Registration(
        points,
        ProjectionFit.of(points, false, 0, 0),
        Projection.HOMOGRAPHY_PARAMETERS,
        pixelSigma);
  }

  /**
   * As {@link #of}, with one radial term of the lens about its optical centre; five points or more.
   *
   * @param centreColumn of the lens in the picture, usually its middle
   * @param centreRow likewise
   */
  public static Registration withLens(
      List<RegistrationPoint> points, double pixelSigma, double centreColumn, double centreRow) {
    requireUsable(points, pixelSigma);
    if (2 * points.size() < Projection.HOMOGRAPHY_PARAMETERS + 2) {
      throw new RegistrationException("a lens term needs five registration points or more");
    }
    return new Registration(
        points,
        ProjectionFit.of(points, true, centreColumn, centreRow),
        Projection.HOMOGRAPHY_PARAMETERS + 1,
        pixelSigma);
  }

  private static void requireUsable(List<RegistrationPoint> points, double pixelSigma) {
    if (points.size() < LEAST_POINTS) {
      throw new RegistrationException(
          points.size()
              + " registration points are too few: "
              + LEAST_POINTS
              + " or more are needed, not on one line; with six the error can be seen as well");
    }
    if (!(pixelSigma > 0) || Double.isInfinite(pixelSigma)) {
      throw new RegistrationException(
          "the accuracy of registration points must be above 0 px, not " + pixelSigma);
    }
    for (RegistrationPoint point : points) {
      double sum = point.xMillimetres() + point.yMillimetres() + point.column() + point.row();
      if (!Double.isFinite(sum) || Math.abs(sum) > 1e6) {
        throw new RegistrationException("point " + point.name() + " has no usable coordinates");
      }
    }
  }

  public PixelPosition toPixel(double xMillimetres, double yMillimetres) {
    double[] pixel = projection.toPixel(xMillimetres, yMillimetres);
    return new PixelPosition(pixel[0], pixel[1]);
  }

  /** The board position a pixel shows, with the error of the registration alone. */
  public BoardPosition toBoard(double column, double row) {
    return toBoard(column, row, 0, 0, 0);
  }

  /**
   * The board position of a pixel position with an error of its own, px^2. The error of the
   * registration at that place is added.
   */
  public BoardPosition toBoard(
      double column,
      double row,
      double columnVariance,
      double rowVariance,
      double pixelCovariance) {
    double[] at = projection.toBoard(column, row);
    double[] own = registrationCovariance(at[0], at[1]);
    double cc = columnVariance + own[0];
    double cr = pixelCovariance + own[1];
    double rr = rowVariance + own[2];
    double[] j = projection.jacobian(at[0], at[1]);
    double determinant = j[0] * j[3] - j[1] * j[2];
    double a = j[3] / determinant;
    double b = -j[1] / determinant;
    double c = -j[2] / determinant;
    double d = j[0] / determinant;
    return new BoardPosition(
        at[0],
        at[1],
        a * a * cc + 2 * a * b * cr + b * b * rr,
        c * c * cc + 2 * c * d * cr + d * d * rr,
        a * c * cc + (a * d + b * c) * cr + b * d * rr);
  }

  /** Error of the tie at a board point as px^2: column, covariance, row. */
  private double[] registrationCovariance(double x, double y) {
    double[] u = projection.board().apply(x, y);
    RealMatrix j = ProjectionFit.jacobian(projection, u, freeParameters);
    RealMatrix c = j.multiply(covariance).multiply(j.transpose());
    double variance = pixelSigma * pixelSigma;
    return new double[] {
      variance * c.getEntry(0, 0), variance * c.getEntry(0, 1), variance * c.getEntry(1, 1)
    };
  }

  public List<RegistrationPoint> points() {
    return points;
  }

  /** Distance of each point from where the fit puts it, px, in the points' order. */
  public List<Double> residualsPixels() {
    List<Double> residuals = new ArrayList<>();
    for (RegistrationPoint point : points) {
      double[] seen = projection.toPixel(point.xMillimetres(), point.yMillimetres());
      residuals.add(Math.hypot(point.column() - seen[0], point.row() - seen[1]));
    }
    return residuals;
  }

  /** Root mean square of the residuals over all points, px. */
  public double rmsResidualPixels() {
    return Math.sqrt(sumOfSquares / points.size());
  }

  /** Sum of the squared residuals of both coordinates, px^2. */
  public double sumOfSquaresPixels() {
    return sumOfSquares;
  }

  public int degreesOfFreedom() {
    return 2 * points.size() - freeParameters;
  }

  /** Error of a point per axis that the fit is weighed with, px: the larger of stated and seen. */
  public double pixelSigma() {
    return pixelSigma;
  }

  /** Whether the points are more than the map needs, so that its residuals mean something. */
  public boolean residualsMeanSomething() {
    return degreesOfFreedom() > 0;
  }

  /** Picture pixels per board millimetre at a board point, geometric mean of both directions. */
  public double pixelsPerMillimetre(double xMillimetres, double yMillimetres) {
    double[] j = projection.jacobian(xMillimetres, yMillimetres);
    return Math.sqrt(Math.abs(j[0] * j[3] - j[1] * j[2]));
  }
}
