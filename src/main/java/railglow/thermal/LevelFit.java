package railglow.thermal;

import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import railglow.thermal.GaussianFit.Window;

/**
 * The middle of a round Gaussian that stands on a level: what is warm around a source lifts it
 * without being part of its shape. Place known, width free, amplitude and level by least squares.
 * Immutable.
 *
 * @param sigma of the Gaussian, pixels
 * @param middle amplitude and level together
 * @param energy one over the variance of the middle, for a known width and a noise of 1 per pixel
 * @param widthVariance of the middle by the width's error, likewise
 * @param squaredMisfit sum of the squares that are left
 * @param degrees of freedom of these
 */
record LevelFit(
    double sigma,
    double middle,
    double energy,
    double widthVariance,
    double squaredMisfit,
    int degrees) {
  /** Place, width, amplitude and level. */
  private static final int FITTED = 5;

  /** Chance leaves more misfit of a right shape once in a hundred. */
  private static final double SELDOM = 0.01;

  private static final int STEPS = 60;

  /** Of the width when it is varied to see what follows. */
  private static final double NUDGE = 0.02;

  /** Widths up to so many times the window's own. */
  private static final double WIDEST = 2;

  /** Least squares of amplitude and level for a width; infinite misfit where both are alike. */
  private record Linear(double middle, double energy, double misfit, int pixels) {}

  /** Null where the window does not tell a Gaussian from a level. */
  static LevelFit of(Window window, double column, double row) {
    double low = Math.log(SourceFit.NARROWEST_PIXELS);
    double high = Math.log(WIDEST * window.columns());
    double best = Double.NaN;
    double least = Double.POSITIVE_INFINITY;
    for (int k = 1; k < STEPS; k++) {
      double width = low + (high - low) * k / STEPS;
      Linear linear = linear(window, column, row, Math.exp(width));
      if (linear.misfit < least) {
        least = linear.misfit;
        best = width;
      }
    }
    double step = (high - low) / STEPS;
    if (!(best > low + 1.5 * step && best < high - 1.5 * step)) {
      return null;
    }
    best = parabola(window, column, row, best, step);
    Linear at = linear(window, column, row, Math.exp(best));
    Linear narrower = linear(window, column, row, Math.exp(best - NUDGE));
    Linear wider = linear(window, column, row, Math.exp(best + NUDGE));
    double curvature = (narrower.misfit - 2 * at.misfit + wider.misfit) / (NUDGE * NUDGE);
    double slope = (wider.middle - narrower.middle) / (2 * NUDGE);
    return curvature > 0
        ? new LevelFit(
            Math.exp(best),
            at.middle,
            at.energy,
            2 * slope * slope / curvature,
            Math.max(0, at.misfit),
            at.pixels - FITTED)
        : null;
  }

  /**
   * Whether the picture has this shape as far as its noise shows.
   *
   * @param cycles that the means are of, whose noise is 1 per cycle
   */
  boolean isWithinNoise(int cycles) {
    return cycles * squaredMisfit
        <= ChiSquaredDistribution.of(degrees).inverseSurvivalProbability(SELDOM);
  }

  /** The same shape in another plane of the window. */
  double middleOf(Window window, double column, double row) {
    return linear(window, column, row, sigma).middle;
  }

  private static double parabola(
      Window window, double column, double row, double width, double step) {
    double before = linear(window, column, row, Math.exp(width - step)).misfit;
    double here = linear(window, column, row, Math.exp(width)).misfit;
    double after = linear(window, column, row, Math.exp(width + step)).misfit;
    double bend = before - 2 * here + after;
    return bend > 0 ? width + 0.5 * step * (before - after) / bend : width;
  }

  private static Linear linear(Window w, double column, double row, double sigma) {
    double n = 0;
    double g1 = 0;
    double g2 = 0;
    double v1 = 0;
    double v2 = 0;
    double gv = 0;
    for (int y = 0, k = 0; y < w.rows(); y++) {
      for (int x = 0; x < w.columns(); x++, k++) {
        if (w.valid()[k]) {
          double dx = w.left() + x - column;
          double dy = w.top() + y - row;
          double g = Math.exp(-0.5 * (dx * dx + dy * dy) / (sigma * sigma));
          double v = w.values()[k];
          n++;
          g1 += g;
          g2 += g * g;
          v1 += v;
          v2 += v * v;
          gv += g * v;
        }
      }
    }
    double determinant = n * g2 - g1 * g1;
    if (n <= FITTED || !(determinant > 1e-9 * n * g2)) {
      return new Linear(Double.NaN, Double.NaN, Double.POSITIVE_INFINITY, (int) n);
    }
    double amplitude = (n * gv - g1 * v1) / determinant;
    double level = (g2 * v1 - g1 * gv) / determinant;
    double variance = (n + g2 - 2 * g1) / determinant;
    return new Linear(amplitude + level, 1 / variance, v2 - amplitude * gv - level * v1, (int) n);
  }
}
