package railglow.sim.heat;

/**
 * A body on the board and the board under it, each of one temperature, as they exchange heat for a
 * while: the exact solution of
 *
 * <pre>
 *   Cb b' = body watts - G (b - u) - L b
 *   Cu u' = board watts + G (b - u)
 * </pre>
 *
 * by the two eigenvalues of its matrix (Sylvester's formula), so that no length of the while makes
 * it less exact. Immutable.
 */
final class PairInContact {
  private final double seconds;
  private final double perBody;
  private final double perBoard;

  /** What is left of (b, u), as rows of a matrix. */
  private final double bb;

  private final double bu;
  private final double ub;
  private final double uu;

  /** The same for heating: the integral of what is left over the while. */
  private final double heatBb;

  private final double heatBu;
  private final double heatUb;
  private final double heatUu;

  /**
   * @param bodyCapacity Cb, J/K
   * @param boardCapacity Cu, J/K
   * @param contact G, W/K, above 0
   * @param loss L of the body to the room, W/K, 0 or more
   * @param seconds how long
   */
  PairInContact(
      double bodyCapacity, double boardCapacity, double contact, double loss, double seconds) {
    this.seconds = seconds;
    perBody = 1 / bodyCapacity;
    perBoard = 1 / boardCapacity;
    double a = -(contact + loss) * perBody;
    double b = contact * perBody;
    double c = contact * perBoard;
    double root = Math.sqrt((a + c) * (a + c) + 4 * b * c);
    double fast = (a - c - root) / 2;
    // the product of both is the determinant, loss c / Cb: without cancelling where it is small
    double slow = loss * perBody * c / fast;
    double weight = 1 / (slow - fast);
    double leftSlow = Math.exp(slow * seconds);
    double leftFast = Math.exp(fast * seconds);
    double heatSlow = meanLeft(slow * seconds) * seconds;
    double heatFast = meanLeft(fast * seconds) * seconds;
    bb = weight * (leftSlow * (a - fast) - leftFast * (a - slow));
    bu = weight * b * (leftSlow - leftFast);
    ub = weight * c * (leftSlow - leftFast);
    uu = weight * (leftSlow * (-c - fast) - leftFast * (-c - slow));
    heatBb = weight * (heatSlow * (a - fast) - heatFast * (a - slow));
    heatBu = weight * b * (heatSlow - heatFast);
    heatUb = weight * c * (heatSlow - heatFast);
    heatUu = weight * (heatSlow * (-c - fast) - heatFast * (-c - slow));
  }

  /** The mean of exp(x s) for s from 0 to 1. */
  private static double meanLeft(double x) {
    return Math.abs(x) < 1e-12 ? 1 : Math.expm1(x) / x;
  }

  double seconds() {
    return seconds;
  }

  /** The body's rise after the while. */
  double body(double body, double board, double bodyWatts, double boardWatts) {
    return bb * body + bu * board + heatBb * bodyWatts * perBody + heatBu * boardWatts * perBoard;
  }

  /** That of the board under it. */
  double board(double body, double board, double bodyWatts, double boardWatts) {
    return ub * body + uu * board + heatUb * bodyWatts * perBody + heatUu * boardWatts * perBoard;
  }
}
