package railglow.camera.alignment;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;

/** Least squares from the normal equations, scaled and with the faintest ridge. Pure. */
final class LeastSquares {
  private static final double RIDGE = 1e-10;

  private LeastSquares() {}

  /**
   * Solves for the unknowns.
   *
   * @param normal the matrix A'A; overwritten
   * @param right the vector A'y; overwritten
   */
  static double[] solve(double[][] normal, double[] right) {
    int n = right.length;
    double[] scale = new double[n];
    for (int a = 0; a < n; a++) {
      scale[a] = 1 / Math.sqrt(Math.max(1e-300, normal[a][a]));
    }
    for (int a = 0; a < n; a++) {
      right[a] *= scale[a];
      for (int b = 0; b < n; b++) {
        normal[a][b] *= scale[a] * scale[b];
      }
      normal[a][a] += RIDGE;
    }
    double[] solved =
        new CholeskyDecomposition(new Array2DRowRealMatrix(normal, false), 1e-8, 1e-300)
            .getSolver()
            .solve(new ArrayRealVector(right, false))
            .toArray();
    for (int a = 0; a < n; a++) {
      solved[a] *= scale[a];
    }
    return solved;
  }
}
