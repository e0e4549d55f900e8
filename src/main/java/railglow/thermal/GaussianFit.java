package railglow.thermal;

import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.NonPositiveDefiniteMatrixException;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * A round Gaussian fitted to a window of a plane by least squares (Levenberg and Marquardt): the
 * maximum likelihood estimate in white noise, whose position reaches the Cramer-Rao bound
 * sqrt(2/pi) noise/amplitude pixels (Condon, PASP 109, 1997, p. 166). Immutable result.
 *
 * @param amplitude at the centre, unit of the plane
 * @param column of the centre
 * @param row of the centre
 * @param sigma pixels
 * @param covariance of (amplitude, column, row, sigma) for a noise variance of 1 per pixel
 * @param energy sum of the squared unit shape over the window
 */
record GaussianFit(
    double amplitude,
    double column,
    double row,
    double sigma,
    double[][] covariance,
    double energy) {
  private static final int PARAMETERS = 4;
  private static final int MOST_STEPS = 60;

  /** The pixels of a fit: {@code values} of a window whose left upper pixel is (left, top). */
  record Window(int left, int top, int columns, int rows, double[] values, boolean[] valid) {}

  /** Fits from a first guess; null when it does not settle inside the window. */
  static GaussianFit of(Window window, double column, double row, double sigma) {
    double[] p = {bestAmplitude(window, column, row, sigma), column, row, sigma};
    double lambda = 1e-3;
    double cost = cost(window, p);
    for (int step = 0; step < MOST_STEPS; step++) {
      double[][] normal = new double[PARAMETERS][PARAMETERS];
      double[] gradient = new double[PARAMETERS];
      accumulate(window, p, normal, gradient);
      double[] next = null;
      double nextCost = Double.POSITIVE_INFINITY;
      while (lambda < 1e8) {
        double[] delta = solve(normal, gradient, lambda);
        if (delta != null) {
          next = p.clone();
          for (int i = 0; i < PARAMETERS; i++) {
            next[i] += delta[i];
          }
          nextCost = inside(window, next) ? cost(window, next) : Double.POSITIVE_INFINITY;
          if (nextCost <= cost) {
            break;
          }
        }
        lambda *= 8;
      }
      if (!(nextCost <= cost)) {
        break;
      }
      boolean settled =
          Math.abs(next[1] - p[1]) + Math.abs(next[2] - p[2]) + Math.abs(next[3] - p[3]) < 1e-7;
      p = next;
      cost = nextCost;
      lambda = Math.max(lambda / 8, 1e-9);
      if (settled) {
        break;
      }
    }
    return result(window, p);
  }

  private static GaussianFit result(Window window, double[] p) {
    double[][] normal = new double[PARAMETERS][PARAMETERS];
    accumulate(window, p, normal, new double[PARAMETERS]);
    double[][] inverse = inverse(normal);
    if (inverse == null || !inside(window, p)) {
      return null;
    }
    return new GaussianFit(p[0], p[1], p[2], p[3], inverse, energy(window, p[1], p[2], p[3]));
  }

  private static boolean inside(Window w, double[] p) {
    return p[1] >= w.left - 0.5
        && p[1] <= w.left + w.columns - 0.5
        && p[2] >= w.top - 0.5
        && p[2] <= w.top + w.rows - 0.5
        && p[3] > 0.15
        && p[3] < w.columns;
  }

  /** With place and width held: the filter's own answer where a free fit finds no hold. */
  static GaussianFit held(Window window, int column, int row, double sigma) {
    double amplitude = Math.max(bestAmplitude(window, column, row, sigma), 1e-12);
    double energy = Math.PI * sigma * sigma;
    double[][] covariance = new double[4][4];
    covariance[0][0] = 2 / energy;
    covariance[1][1] = 2 * sigma * sigma / (energy * amplitude * amplitude);
    covariance[2][2] = covariance[1][1];
    covariance[3][3] = covariance[1][1];
    return new GaussianFit(amplitude, column, row, sigma, covariance, energy);
  }

  /** Amplitude that fits best for a known shape. */
  static double bestAmplitude(Window w, double column, double row, double sigma) {
    double sum = 0;
    double energy = 0;
    for (int y = 0, k = 0; y < w.rows; y++) {
      for (int x = 0; x < w.columns; x++, k++) {
        if (w.valid[k]) {
          double g = shape(w.left + x - column, w.top + y - row, sigma);
          sum += g * w.values[k];
          energy += g * g;
        }
      }
    }
    return energy > 0 ? sum / energy : 0;
  }

  /** Sum of the squared unit shape over the window. */
  static double energy(Window w, double column, double row, double sigma) {
    double energy = 0;
    for (int y = 0, k = 0; y < w.rows; y++) {
      for (int x = 0; x < w.columns; x++, k++) {
        double g = w.valid[k] ? shape(w.left + x - column, w.top + y - row, sigma) : 0;
        energy += g * g;
      }
    }
    return energy;
  }

  /** Sum of the squares that this fit leaves of a window. */
  double squaredMisfit(Window window) {
    return cost(window, new double[] {amplitude, column, row, sigma});
  }

  private static double cost(Window w, double[] p) {
    double sum = 0;
    for (int y = 0, k = 0; y < w.rows; y++) {
      for (int x = 0; x < w.columns; x++, k++) {
        if (w.valid[k]) {
          double r = w.values[k] - p[0] * shape(w.left + x - p[1], w.top + y - p[2], p[3]);
          sum += r * r;
        }
      }
    }
    return sum;
  }

  private static void accumulate(Window w, double[] p, double[][] normal, double[] gradient) {
    double perVariance = 1 / (p[3] * p[3]);
    double[] j = new double[PARAMETERS];
    for (int y = 0, k = 0; y < w.rows; y++) {
      for (int x = 0; x < w.columns; x++, k++) {
        if (w.valid[k]) {
          double dx = w.left + x - p[1];
          double dy = w.top + y - p[2];
          double g = shape(dx, dy, p[3]);
          j[0] = g;
          j[1] = p[0] * g * dx * perVariance;
          j[2] = p[0] * g * dy * perVariance;
          j[3] = p[0] * g * (dx * dx + dy * dy) * perVariance / p[3];
          double r = w.values[k] - p[0] * g;
          for (int a = 0; a < PARAMETERS; a++) {
            gradient[a] += j[a] * r;
            for (int b = 0; b <= a; b++) {
              normal[a][b] += j[a] * j[b];
              normal[b][a] = normal[a][b];
            }
          }
        }
      }
    }
  }

  /** The unit shape so far from its middle. */
  static double shape(double dx, double dy, double sigma) {
    return Math.exp(-0.5 * (dx * dx + dy * dy) / (sigma * sigma));
  }

  private static double[] solve(double[][] normal, double[] gradient, double lambda) {
    double[][] damped = new double[PARAMETERS][];
    for (int i = 0; i < PARAMETERS; i++) {
      damped[i] = normal[i].clone();
      damped[i][i] *= 1 + lambda;
    }
    double[][] inverse = inverse(damped);
    return inverse == null ? null : MatrixUtils.createRealMatrix(inverse).operate(gradient);
  }

  private static double[][] inverse(double[][] matrix) {
    // scaled to a unit diagonal, so that parameters of different units do not look singular
    double[] d = new double[PARAMETERS];
    RealMatrix scaled = MatrixUtils.createRealMatrix(PARAMETERS, PARAMETERS);
    for (int i = 0; i < PARAMETERS; i++) {
      if (!(matrix[i][i] > 0)) {
        return null;
      }
      d[i] = Math.sqrt(matrix[i][i]);
    }
    for (int i = 0; i < PARAMETERS; i++) {
      for (int k = 0; k < PARAMETERS; k++) {
        scaled.setEntry(i, k, matrix[i][k] / (d[i] * d[k]));
      }
    }
    try {
      RealMatrix inverse = new CholeskyDecomposition(scaled, 1e-9, 1e-9).getSolver().getInverse();
      double[][] result = new double[PARAMETERS][PARAMETERS];
      for (int i = 0; i < PARAMETERS; i++) {
        for (int k = 0; k < PARAMETERS; k++) {
          result[i][k] = inverse.getEntry(i, k) / (d[i] * d[k]);
        }
      }
      return result;
    } catch (NonPositiveDefiniteMatrixException e) {
      return null;
    }
  }
}
