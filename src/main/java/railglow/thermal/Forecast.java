package railglow.thermal;

import java.util.OptionalInt;

/**
 * What a run can be expected to see, before it is made: the detector's own bounds, family and
 * filters applied to a source of known shape in noise of known size. Immutable.
 */
public final class Forecast {
  /** Position in two axes, width and delay: each lets the largest score rise a little. */
  private static final double FREE_AXES = 4;

  private final DetectionSettings settings;
  private final double scorePerKelvin;
  private final LookBounds bounds;

  private Forecast(DetectionSettings settings, double scorePerKelvin, LookBounds bounds) {
    this.settings = settings;
    this.scorePerKelvin = scorePerKelvin;
    this.bounds = bounds;
  }

  /**
   * @param settings of the run
   * @param width of the picture, pixels
   * @param height of the picture, pixels
   * @param noise of the camera
   * @param blurSigmaPixels Gaussian sigma of the source in the picture
   * @param bodyTimeConstantSeconds of the source
   */
  public static Forecast of(
      DetectionSettings settings,
      int width,
      int height,
      PulseNoise noise,
      double blurSigmaPixels,
      double bodyTimeConstantSeconds) {
    double period = settings.periodSeconds();
    PooledNoise typical =
        new PooledNoise(
            noise.inPhaseVariance(period) / (settings.coded() ? 2 : 1),
            noise.quadratureVariance(period) / (settings.coded() ? 2 : 1),
            0,
            Double.POSITIVE_INFINITY,
            Double.POSITIVE_INFINITY,
            1,
            PooledNoise.LEAST_WILD,
            Double.POSITIVE_INFINITY,
            false);
    DelayArc arc = DelayArc.of(settings, typical);
    double[] sigmas = settings.filterSigmasPixels();
    double[] degrees = new double[sigmas.length];
    java.util.Arrays.fill(degrees, Double.POSITIVE_INFINITY);
    FieldFamily family =
        new FieldFamily(width, height, sigmas, degrees, arc.radians(), arc.directions());
    FirstOrderResponse g = settings.response(bodyTimeConstantSeconds);
    double perCycle = new WidthStatistics(1, 1, typical, arc, 1).unitSignal(g);
    double gain = Math.sqrt(Math.PI) * blurSigmaPixels * widthMatch(sigmas, blurSigmaPixels, noise);
    RunError error = RunError.of(settings.minCycles(), settings.maxCycles());
    LookBounds bounds =
        plain(error.boundsFor(family, settings.familyWiseError()), settings, typical.wildShare());
    return new Forecast(settings, perCycle * gain, bounds);
  }

  /**
   * The scores by the picture's noise that pass bounds once a pixel of typical scatter is weighed
   * against the chance that its noise is its own: with few cycles they lie higher than the bounds.
   */
  private static LookBounds plain(LookBounds bounds, DetectionSettings settings, double wildShare) {
    double[] scores = new double[settings.maxCycles() - settings.minCycles() + 1];
    for (int j = 0; j < scores.length; j++) {
      int degrees = settings.minCycles() + j - 1;
      double bound = bounds.at(settings.minCycles() + j);
      double chance =
          degrees < 1
              ? 0
              : WildPixels.of(2.0 * degrees, Double.POSITIVE_INFINITY).chance(1, wildShare);
      scores[j] = chance > 0 ? plain(bound, degrees, chance) : bound;
    }
    return LookBounds.given(settings.minCycles(), scores);
  }

  private static double plain(double bound, int degrees, double chance) {
    double low = bound;
    double high = bound + 10;
    for (int i = 0; i < 40; i++) {
      double middle = (low + high) / 2;
      boolean passes = WildPixels.score(middle, NormalScore.ofT(middle, degrees), chance) >= bound;
      low = passes ? low : middle;
      high = passes ? middle : high;
    }
    return high;
  }

  /**
   * Share of the score kept by the best of the widths: 2 s w / (s^2 + w^2), less by what the filter
   * lets through of noise that neighbours share.
   */
  private static double widthMatch(double[] sigmas, double blur, PulseNoise noise) {
    double best = 0;
    for (double w : sigmas) {
      double kept = 2 * w * blur / (w * w + blur * blur);
      best = Math.max(best, kept / Math.sqrt(noise.filteredVariancePart(w)));
    }
    return best;
  }

  /** Probability that a source of this final rise has been called by this cycle. */
  public double probabilityOfFinding(double riseKelvin, int byCycle) {
    double[] crossing = bounds.crossingProbabilities(drift(riseKelvin));
    double sum = 0;
    for (int k = settings.minCycles(); k <= Math.min(byCycle, settings.maxCycles()); k++) {
      sum += crossing[k - settings.minCycles()];
    }
    return Math.min(1, sum);
  }

  /**
   * The first cycle by which a source of this final rise has been called with the given
   * probability; empty when the cap comes first. 0.5 gives the median.
   */
  public OptionalInt cyclesToFind(double riseKelvin, double probability) {
    double[] crossing = bounds.crossingProbabilities(drift(riseKelvin));
    double sum = 0;
    for (int j = 0; j < crossing.length; j++) {
      sum += crossing[j];
      if (sum >= probability) {
        return OptionalInt.of(settings.minCycles() + j);
      }
    }
    return OptionalInt.empty();
  }

  /** The same in seconds of pulsing; infinite when the cap comes first. */
  public double secondsToFind(double riseKelvin, double probability) {
    OptionalInt cycles = cyclesToFind(riseKelvin, probability);
    return cycles.isPresent()
        ? cycles.getAsInt() * settings.cycleSeconds()
        : Double.POSITIVE_INFINITY;
  }

  /** The final rise that is called with 95 % probability by this cycle. */
  public double smallestRiseKelvin(int byCycle) {
    if (byCycle < settings.minCycles()) {
      return Double.POSITIVE_INFINITY;
    }
    double low = 0;
    double high = 20 / (scorePerKelvin * Math.sqrt(byCycle));
    for (int i = 0; i < 30; i++) {
      double middle = (low + high) / 2;
      if (probabilityOfFinding(middle, byCycle) < 0.95) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return high;
  }

  /**
   * Score per root of a cycle. The field's peak is higher than the score at the source's own place,
   * width and delay: its square by one per free axis, on average, once the score is near the bound.
   */
  private double drift(double riseKelvin) {
    double own = riseKelvin * scorePerKelvin;
    if (!(own > 0)) {
      return 0;
    }
    double bound = bounds.at(settings.maxCycles());
    return own * Math.sqrt(1 + FREE_AXES / (bound * bound));
  }
}
