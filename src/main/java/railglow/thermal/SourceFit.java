package railglow.thermal;

/** Fits the shape, place and rise of sources in the unfiltered mean planes. Not thread-safe. */
final class SourceFit {
  /** No optics makes an image narrower than this; what is narrower is a bad pixel. */
  private static final double NARROWEST_PIXELS = 0.6;

  /**
   * The largest score over place and delay exceeds that at the source's own by (free axes) / (2
   * score): relative to the score this over its square.
   */
  private static final double PEAK_BIAS = 1.5;

  /** Second-order growth of the position's variance at low scores, by simulation. */
  private static final double CURVATURE = 20;

  private final DetectionSettings settings;
  private final ChannelMoments plain;
  private final int width;
  private final int height;
  private final WidthStatistics[] statistics;

  SourceFit(
      DetectionSettings settings,
      ChannelMoments plain,
      int width,
      int height,
      WidthStatistics[] statistics) {
    this.settings = settings;
    this.plain = plain;
    this.width = width;
    this.height = height;
    this.statistics = statistics;
  }

  /**
   * The source at a candidate; null when it is a bad pixel.
   *
   * @param stopShare what is left of the score when the run was stopped by it, see EarlyStop
   */
  HeatSource source(Candidate candidate, double familyWiseP, double stopShare, CycleSigns signs) {
    WidthStatistics s = statistics[candidate.widthIndex()];
    int direction = direction(candidate, s);
    double a = s.arc().weightI()[direction];
    double b = s.arc().weightC()[direction];
    GaussianFit.Window window = window(candidate, s.sigma(), a, b);
    GaussianFit fit = GaussianFit.of(window, candidate.column(), candidate.row(), s.sigma());
    if (fit != null && fit.sigma() < NARROWEST_PIXELS) {
      return null;
    }
    if (fit == null || !(fit.amplitude() > 0) || !near(fit, candidate, s.sigma())) {
      fit = unfitted(window, candidate, s.sigma());
    }
    return describe(candidate, familyWiseP, stopShare, signs, s, window, fit);
  }

  /** The direction of the arc in which the candidate is strongest. */
  private int direction(Candidate candidate, WidthStatistics s) {
    double column = candidate.column();
    double row = candidate.row();
    double i =
        GaussianFit.bestAmplitude(window(candidate, s.sigma(), 1, 0), column, row, s.sigma());
    double c =
        GaussianFit.bestAmplitude(window(candidate, s.sigma(), 0, 1), column, row, s.sigma());
    int best = 0;
    double most = Double.NEGATIVE_INFINITY;
    for (int j = 0; j < s.arc().directions(); j++) {
      double y = s.arc().weightI()[j] * i + s.arc().weightC()[j] * c;
      if (y > most) {
        most = y;
        best = j;
      }
    }
    return best;
  }

  private HeatSource describe(
      Candidate candidate,
      double familyWiseP,
      double stopShare,
      CycleSigns signs,
      WidthStatistics s,
      GaussianFit.Window window,
      GaussianFit fit) {
    // along the direction searched the filter's normalised noise has variance 1 per cycle
    double variance = 1.0 / plain.cycles();
    double square = Math.max(candidate.score() * candidate.score(), 9);
    double share = stopShare * (1 - PEAK_BIAS / square);
    double inPhase = share * amplitude(window, plain.meanI(), fit);
    double quadrature = share * amplitude(window, plain.meanC(), fit);
    double spread = variance * (1 + CURVATURE / square) / (stopShare * stopShare);
    double perEnergy = variance / fit.energy();
    PooledNoise noise = s.noise();
    double known = perEnergy / (fit.amplitude() * fit.amplitude());
    double whole = variance * fit.covariance()[0][0] / (fit.amplitude() * fit.amplitude());
    SettledRise rise =
        SettledRise.of(
            inPhase,
            quadrature,
            noise.varianceI() * perEnergy,
            noise.varianceC() * perEnergy,
            noise.covariance() * perEnergy,
            Math.max(0, whole - known),
            settings);
    int pixel = candidate.row() * width + candidate.column();
    return new HeatSource(
        fit.column(),
        fit.row(),
        spread * fit.covariance()[1][1],
        spread * fit.covariance()[2][2],
        spread * fit.covariance()[1][2],
        rise.kelvin(),
        rise.interval95(),
        inPhase,
        quadrature,
        rise.timeConstantSeconds(),
        fit.sigma(),
        familyWiseP,
        signs.share(pixel, Math.atan2(quadrature, inPhase)));
  }

  private static boolean near(GaussianFit fit, Candidate candidate, double sigma) {
    double far = Math.hypot(fit.column() - candidate.column(), fit.row() - candidate.row());
    return far <= 2 * sigma + 1 && fit.sigma() <= 3 * sigma;
  }

  /** The filter's own answer where a free fit finds no hold. */
  private static GaussianFit unfitted(
      GaussianFit.Window window, Candidate candidate, double sigma) {
    double amplitude =
        GaussianFit.bestAmplitude(window, candidate.column(), candidate.row(), sigma);
    amplitude = Math.max(amplitude, 1e-12);
    double energy = Math.PI * sigma * sigma;
    double[][] covariance = new double[4][4];
    covariance[0][0] = 2 / energy;
    covariance[1][1] = 2 * sigma * sigma / (energy * amplitude * amplitude);
    covariance[2][2] = covariance[1][1];
    covariance[3][3] = covariance[1][1];
    return new GaussianFit(
        amplitude, candidate.column(), candidate.row(), sigma, covariance, energy);
  }

  private double amplitude(GaussianFit.Window shape, float[] plane, GaussianFit fit) {
    GaussianFit.Window window =
        fill(shape.left(), shape.top(), shape.columns(), shape.rows(), plane, 1, plane, 0);
    return GaussianFit.bestAmplitude(window, fit.column(), fit.row(), fit.sigma());
  }

  private GaussianFit.Window window(Candidate candidate, double sigma, double a, double b) {
    int reach = (int) Math.ceil(2.5 * Math.max(sigma, 1.5)) + 1;
    int left = Math.max(0, candidate.column() - reach);
    int top = Math.max(0, candidate.row() - reach);
    int columns = Math.min(width - 1, candidate.column() + reach) - left + 1;
    int rows = Math.min(height - 1, candidate.row() + reach) - top + 1;
    return fill(left, top, columns, rows, plain.meanI(), a, plain.meanC(), b);
  }

  private GaussianFit.Window fill(
      int left, int top, int columns, int rows, float[] one, double a, float[] two, double b) {
    double[] values = new double[columns * rows];
    boolean[] valid = new boolean[values.length];
    for (int y = 0, k = 0; y < rows; y++) {
      for (int x = 0; x < columns; x++, k++) {
        int i = (top + y) * width + left + x;
        values[k] = a * one[i] + b * two[i];
        valid[k] = plain.squaresI()[i] > 0;
      }
    }
    return new GaussianFit.Window(left, top, columns, rows, values, valid);
  }
}
