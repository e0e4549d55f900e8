package railglow.thermal;

/**
 * Amplitudes of a source in both channels and how well they are known. Immutable.
 *
 * @param inPhase amplitude
 * @param quadrature amplitude
 * @param varianceI of the in-phase amplitude
 * @param varianceC of the quadrature amplitude
 * @param covariance of both
 */
record Amplitudes(
    double inPhase, double quadrature, double varianceI, double varianceC, double covariance) {

  /** The generalised least squares of one response: how high it settles and how badly it fits. */
  Settled through(FirstOrderResponse g, double timeConstant) {
    double i = g.inPhase();
    double c = g.quadrature();
    double determinant = varianceI * varianceC - covariance * covariance;
    double information = quadraticForm(i, c) / determinant;
    double cross =
        (varianceC * i * inPhase
                + varianceI * c * quadrature
                - covariance * (i * quadrature + c * inPhase))
            / determinant;
    double rise = cross / information;
    double chi = quadraticForm(inPhase, quadrature) / determinant - cross * rise;
    return new Settled(timeConstant, rise, chi, information);
  }

  /** Length of both. */
  double size() {
    return Math.hypot(inPhase, quadrature);
  }

  /** Variance of the length: of the noise along it. */
  double sizeVariance() {
    double size = size();
    double a = size > 0 ? inPhase / size : 1;
    double b = size > 0 ? quadrature / size : 0;
    return a * a * varianceI + b * b * varianceC + 2 * a * b * covariance;
  }

  /** Standard deviation of the angle between both, radians: of the noise across the length. */
  double angleSigma() {
    double size = size();
    if (!(size > 0)) {
      return Math.PI;
    }
    double a = inPhase / size;
    double b = quadrature / size;
    double across = b * b * varianceI + a * a * varianceC - 2 * a * b * covariance;
    return Math.min(Math.PI / 2, Math.sqrt(Math.max(0, across)) / size);
  }

  private double quadraticForm(double i, double c) {
    return varianceC * i * i + varianceI * c * c - 2 * covariance * i * c;
  }

  /**
   * What a time constant makes of the amplitudes.
   *
   * @param rise settled
   * @param chi squared misfit in units of the noise
   * @param information one over the variance of the rise at this time constant
   */
  record Settled(double timeConstant, double rise, double chi, double information) {}
}
