package railglow.board.geometry;

/**
 * A position on the board with its error.
 *
 * @param xMillimetres from the board's lower left corner, to the right
 * @param yMillimetres upwards
 * @param xVariance mm^2
 * @param yVariance mm^2
 * @param covariance mm^2
 */
public record BoardPosition(
    double xMillimetres,
    double yMillimetres,
    double xVariance,
    double yVariance,
    double covariance) {
  /** The same position with an independent, equal error of both coordinates added. */
  public BoardPosition withAdded(double sigmaMillimetres) {
    double variance = sigmaMillimetres * sigmaMillimetres;
    return new BoardPosition(
        xMillimetres, yMillimetres, xVariance + variance, yVariance + variance, covariance);
  }

  /** Standard deviation along the longer axis of the error ellipse. */
  public double largestSigmaMillimetres() {
    double mean = (xVariance + yVariance) / 2;
    double half = (xVariance - yVariance) / 2;
    return Math.sqrt(mean + Math.sqrt(half * half + covariance * covariance));
  }
}
