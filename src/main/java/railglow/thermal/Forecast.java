package railglow.thermal;

import java.util.Arrays;
import java.util.OptionalInt;

/**
 * What a run can be expected to see, before it is made: the detector's own bounds, family and
 * filters applied to a source of known shape in noise of known size. Immutable.
 */
public final class Forecast {
  /**
   * Place in two axes lets the square of the largest score rise by one each; width and delay, over
   * few steps, by about half of that.
   */
  private static final double FREE_AXES = 3;

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
    PooledNoise typical = typical(settings, noise, 1);
    DelayArc arc = DelayArc.of(settings, typical);
    double[] sigmas = settings.filterSigmasPixels();
    double[] degrees = new double[sigmas.length];
    Arrays.fill(degrees, Double.POSITIVE_INFINITY);
    FieldFamily family =
        new FieldFamily(width, height, sigmas, degrees, arc.radians(), arc.directions());
    double best = 0;
    double part = 0;
    for (double sigma : sigmas) {
      double kept =
          2 * sigma * blurSigmaPixels / (sigma * sigma + blurSigmaPixels * blurSigmaPixels);
      double here = kept * ExpectedLines.scorePart(noise, sigma, width, height);
      best = here > part ? sigma : best;
      part = Math.max(part, here);
    }
    LookBounds bounds =
        RunError.of(settings.minCycles(), settings.maxCycles())
            .boundsFor(family, settings.familyWiseError());
    FirstOrderResponse g = settings.response(bodyTimeConstantSeconds);
    double unit = unitSignal(typical, arc, g);
    double[] scores = new double[settings.maxCycles() - settings.minCycles() + 1];
    for (int j = 0; j < scores.length; j++) {
      int cycles = settings.minCycles() + j;
      double pooled = PooledNoise.pooledDegrees(width * height, best, cycles - 1);
      double peak = byPicture(bounds.at(cycles), cycles - 1, pooled, typical.wildShare());
      double of =
          unitSignal(typical(settings, noise, PooledNoise.quadratureOfMean(cycles)), arc, g);
      scores[j] = Math.sqrt(Math.max(0, peak * peak - FREE_AXES)) * unit / of;
    }
    return new Forecast(
        settings,
        alongArc(arc, g) * Math.sqrt(Math.PI) * blurSigmaPixels * part,
        LookBounds.given(settings.minCycles(), scores));
  }

  private static PooledNoise typical(
      DetectionSettings settings, PulseNoise noise, double quadraturePart) {
    double period = settings.periodSeconds();
    int pulses = settings.coded() ? 2 : 1;
    return new PooledNoise(
        noise.inPhaseVariance(period) / pulses,
        noise.quadratureVariance(period) * quadraturePart / pulses,
        0,
        Double.POSITIVE_INFINITY,
        Double.POSITIVE_INFINITY,
        1,
        PooledNoise.LEAST_WILD,
        Double.POSITIVE_INFINITY,
        false);
  }

  /** Signal to noise ratio per cycle along the best of the directions searched. */
  private static double alongArc(DelayArc arc, FirstOrderResponse g) {
    double best = 0;
    for (int j = 0; j < arc.directions(); j++) {
      best = Math.max(best, arc.weightI()[j] * g.inPhase() + arc.weightC()[j] * g.quadrature());
    }
    return best;
  }

  private static double unitSignal(PooledNoise noise, DelayArc arc, FirstOrderResponse g) {
    return new WidthStatistics(1, 1, noise, arc, 1).unitSignal(g);
  }

  /**
   * The t by the picture's noise that passes a bound: that noise has degrees of freedom of its own,
   * and a pixel of typical scatter is weighed against the chance that its noise is its own. With
   * few cycles it lies higher than the bound.
   */
  private static double byPicture(double bound, int degrees, double pooled, double wildShare) {
    if (degrees < 1) {
      return bound;
    }
    double chance = WildPixels.of(2.0 * degrees, Double.POSITIVE_INFINITY).chance(1, wildShare);
    double low = bound;
    double high = bound + 20;
    for (int i = 0; i < 40; i++) {
      double t = (low + high) / 2;
      double score = NormalScore.ofT(t, pooled);
      boolean passes = WildPixels.score(score, NormalScore.ofT(t, degrees), chance) >= bound;
      low = passes ? low : t;
      high = passes ? t : high;
    }
    return high;
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

  /** Score per root of a cycle at the source's own place, width and delay. */
  private double drift(double riseKelvin) {
    return Math.max(0, riseKelvin * scorePerKelvin);
  }
}
