package railglow.thermal;

/**
 * How far the heat around a source reaches along its longer and its shorter axis: the elliptical
 * Gaussian whose weighted second moments match it (adaptive moments, Bernstein and Jarvis, Astron.
 * J. 123 (2002) 583, section 3). Immutable.
 *
 * @param column of its middle
 * @param row likewise
 * @param longPixels standard deviation along the longer axis
 * @param shortPixels standard deviation across it
 * @param alongColumn direction of the longer axis, a unit vector
 * @param alongRow likewise
 * @param ratioSigma standard deviation of longPixels / shortPixels by the planes' noise
 */
public record HeatShape(
    double column,
    double row,
    double longPixels,
    double shortPixels,
    double alongColumn,
    double alongRow,
    double ratioSigma) {
  /** What can't be measured is taken for round, and for unknown. */
  public static final HeatShape UNKNOWN = new HeatShape(0, 0, 1, 1, 1, 0, Double.POSITIVE_INFINITY);

  private static final int MOST_STEPS = 200;
  private static final double SETTLED = 1e-4;
  private static final double LEAST_PIXELS = 0.7;
  private static final double REACH = 4;

  /** Of the longer to the shorter axis. */
  public double ratio() {
    return longPixels / shortPixels;
  }

  /**
   * @param inPhase with its common parts removed
   * @param quadrature likewise
   * @return {@link #UNKNOWN} where no such ellipse settles in the picture
   */
  public static HeatShape of(Plane inPhase, Plane quadrature, HeatSource source) {
    double size = Math.hypot(source.inPhaseKelvin(), source.quadratureKelvin());
    if (!(size > 0)) {
      return UNKNOWN;
    }
    Plane heat = new Plane(inPhase.width(), inPhase.height());
    double weightI = source.inPhaseKelvin() / size;
    double weightC = source.quadratureKelvin() / size;
    for (int i = 0; i < heat.values().length; i++) {
      heat.values()[i] = (float) (weightI * inPhase.values()[i] + weightC * quadrature.values()[i]);
    }
    return new Fit(heat, source).settled();
  }

  /** The search for the ellipse; used once. */
  private static final class Fit {
    private final Plane heat;
    private final double start;
    private double column;
    private double row;
    private double xx;
    private double yy;
    private double xy;
    private double change;
    private double ratioSigma;

    Fit(Plane heat, HeatSource source) {
      this.heat = heat;
      column = source.column();
      row = source.row();
      start = Math.max(LEAST_PIXELS, source.widthPixels());
      xx = start * start;
      yy = xx;
    }

    HeatShape settled() {
      double noise = PlaneNoise.sigma(heat);
      for (int k = 0; k < MOST_STEPS; k++) {
        if (!step(noise)) {
          return UNKNOWN;
        }
        if (change < SETTLED) {
          return shape();
        }
      }
      return UNKNOWN;
    }

    private boolean step(double noise) {
      double det = xx * yy - xy * xy;
      double reach = REACH * Math.sqrt(Math.max(xx, yy));
      int left = (int) Math.max(0, Math.floor(column - reach));
      int right = (int) Math.min(heat.width() - 1, Math.ceil(column + reach));
      int top = (int) Math.max(0, Math.floor(row - reach));
      int bottom = (int) Math.min(heat.height() - 1, Math.ceil(row + reach));
      double sum = 0;
      double sx = 0;
      double sy = 0;
      double sxx = 0;
      double syy = 0;
      double sxy = 0;
      double nxx = 0;
      double nyy = 0;
      for (int r = top; r <= bottom; r++) {
        for (int c = left; c <= right; c++) {
          double x = c - column;
          double y = r - row;
          double g = StrictMath.exp(-0.5 * (yy * x * x - 2 * xy * x * y + xx * y * y) / det);
          double value = g * heat.at(c, r);
          sum += value;
          sx += value * x;
          sy += value * y;
          sxx += value * x * x;
          syy += value * y * y;
          sxy += value * x * y;
          nxx += g * g * x * x * x * x;
          nyy += g * g * y * y * y * y;
        }
      }
      if (!(sum > 0)) {
        return false;
      }
      double mx = sx / sum;
      double my = sy / sum;
      double oldSum = xx + yy;
      double newXx = 2 * (sxx / sum - mx * mx);
      double newYy = 2 * (syy / sum - my * my);
      double newXy = 2 * (sxy / sum - mx * my);
      change = (Math.abs(newXx - xx) + Math.abs(newYy - yy) + Math.abs(newXy - xy)) / oldSum;
      change += Math.hypot(mx, my) / Math.sqrt(oldSum);
      column += mx;
      row += my;
      xx = newXx;
      yy = newYy;
      xy = newXy;
      ratioSigma =
          0.5
              * Math.hypot(
                  2 * noise * Math.sqrt(nxx) / sum / xx, 2 * noise * Math.sqrt(nyy) / sum / yy);
      double least = LEAST_PIXELS * LEAST_PIXELS;
      boolean inside =
          column >= 0 && row >= 0 && column <= heat.width() - 1 && row <= heat.height() - 1;
      return inside
          && xx > least
          && yy > least
          && xx * yy - xy * xy > least * least
          && Math.sqrt(Math.max(xx, yy)) < heat.width() / 2.0;
    }

    private HeatShape shape() {
      double mean = (xx + yy) / 2;
      double half = Math.hypot((xx - yy) / 2, xy);
      double angle = 0.5 * StrictMath.atan2(2 * xy, xx - yy);
      double longer = Math.sqrt(mean + half);
      double shorter = Math.sqrt(mean - half);
      return new HeatShape(
          column,
          row,
          longer,
          shorter,
          StrictMath.cos(angle),
          StrictMath.sin(angle),
          ratioSigma * longer / shorter);
    }
  }
}
