package railglow.board.ladder;

import java.util.Arrays;

/**
 * A weighted least squares line y = intercept + slope x with the errors of both (Bevington and
 * Robinson, Data Reduction and Error Analysis, 3rd ed., section 6.3). Pure.
 *
 * @param interceptSigma from the given errors of y
 * @param slopeSigma likewise
 * @param covariance of intercept and slope
 * @param chiSquared sum of squared residuals in units of the given errors
 * @param degreesOfFreedom points minus two
 */
public record StraightLine(
    double intercept,
    double slope,
    double interceptSigma,
    double slopeSigma,
    double covariance,
    double chiSquared,
    int degreesOfFreedom) {
  /**
   * @param x at least two different values
   * @param sigma of y, above 0
   */
  public static StraightLine of(double[] x, double[] y, double[] sigma) {
    int n = x.length;
    if (n < 2 || y.length != n || sigma.length != n) {
      throw new IllegalArgumentException("a line needs two points or more, each with its error");
    }
    double weights = 0;
    double meanX = 0;
    double meanY = 0;
    for (int i = 0; i < n; i++) {
      double weight = 1 / (sigma[i] * sigma[i]);
      weights += weight;
      meanX += weight * x[i];
      meanY += weight * y[i];
    }
    meanX /= weights;
    meanY /= weights;
    double xx = 0;
    double xy = 0;
    for (int i = 0; i < n; i++) {
      double weight = 1 / (sigma[i] * sigma[i]);
      xx += weight * (x[i] - meanX) * (x[i] - meanX);
      xy += weight * (x[i] - meanX) * (y[i] - meanY);
    }
    if (!(xx > 0)) {
      throw new IllegalArgumentException("a line needs two different x");
    }
    double slope = xy / xx;
    double intercept = meanY - slope * meanX;
    double chi = 0;
    for (int i = 0; i < n; i++) {
      double residual = (y[i] - meanY) - slope * (x[i] - meanX);
      chi += residual * residual / (sigma[i] * sigma[i]);
    }
    return new StraightLine(
        intercept,
        slope,
        Math.sqrt(1 / weights + meanX * meanX / xx),
        Math.sqrt(1 / xx),
        -meanX / xx,
        chi,
        n - 2);
  }

  /** As {@link #of}, all points equal; the errors then come from the scatter about the line. */
  public static StraightLine unweighted(double[] x, double[] y) {
    double[] ones = new double[x.length];
    Arrays.fill(ones, 1);
    StraightLine line = of(x, y, ones);
    double scatter =
        line.degreesOfFreedom > 0 ? Math.sqrt(line.chiSquared / line.degreesOfFreedom) : 0;
    return new StraightLine(
        line.intercept,
        line.slope,
        line.interceptSigma * scatter,
        line.slopeSigma * scatter,
        line.covariance * scatter * scatter,
        line.chiSquared,
        line.degreesOfFreedom);
  }

  public double at(double x) {
    return intercept + slope * x;
  }

  /** Standard deviation of the line itself at x. */
  public double sigmaAt(double x) {
    return Math.sqrt(
        interceptSigma * interceptSigma + 2 * x * covariance + x * x * slopeSigma * slopeSigma);
  }
}
