package railglow.thermal;

import java.util.Arrays;
import java.util.Locale;

/**
 * Prints the mean number of cycles to the decision beside the least that any test of the same
 * errors can need: Wald's bound on the expected sample number, (1-b) log((1-b)/a) + b log(b/(1-a))
 * over half the squared drift (Wald, Sequential Analysis, 1947, appendix A.7), of a source that an
 * equally wide search calls with 95 % at the cap, and of stronger ones. Both are at least the first
 * lawful look. By exact integration; argument: cap in cycles (30). With a second argument, runs a
 * line, and perhaps a third, how many times the rise: of the whole detector on invented noise.
 */
public final class DecisionTimeStudy {
  private static final int FIRST = 4;
  private static final double[] ERRORS = {1e-5, 1e-6, 1e-7};
  private static final double[] STRENGTHS = {1, 1.5, 2, 3, 5, 10};

  private DecisionTimeStudy() {}

  public static void main(String[] args) {
    int cap = args.length > 0 ? Integer.parseInt(args[0]) : 30;
    if (args.length > 1) {
      double[] strengths =
          args.length > 2
              ? new double[] {Double.parseDouble(args[2])}
              : new double[] {1, 1.5, 2, 3, 10};
      measured(Integer.parseInt(args[1]), cap, strengths);
      return;
    }
    System.out.println(
        "| error per test | times the rise of 95 % | found by the cap | mean cycles | least mean | ratio |");
    System.out.println("|---|---|---|---|---|---|");
    for (double error : ERRORS) {
      LookBounds bounds = LookBounds.of(FIRST, cap, error);
      double design = design(bounds, cap);
      for (double strength : STRENGTHS) {
        line(bounds, error, cap, strength, strength * design);
      }
    }
  }

  /**
   * The whole detector on white noise beside tests that know the noise and are asked for the same
   * error over the picture: the least mean of any test that knows the source's width and delay too,
   * the best of those that look after whole cycles, and the best of those that know neither width
   * nor delay, whose family is the detector's.
   */
  private static void measured(int runs, int cap, double[] strengths) {
    System.out.println(
        "| blur px | tau/P | times the rise | found | mean cycles | standard error | least mean |"
            + " ratio | best lawful | ratio | width and delay unknown | ratio |");
    System.out.println("|---|---|---|---|---|---|---|---|---|---|---|---|");
    DetectionSettings settings = DetectionSettings.usual(ForecastStudy.PERIOD, 0, 0.05, FIRST, cap);
    double errorOfAll = errorOfAll(settings);
    for (double[] scene : new double[][] {{2, 0}, {2, 0.25}, {2, 1}, {3, 0.25}}) {
      double tau = scene[1] * ForecastStudy.PERIOD;
      double design = ForecastStudy.forecast(settings, scene[0], tau).smallestRiseKelvin(cap);
      double error =
          NormalScore.upperTail(
              IdealObserver.threshold(ForecastStudy.WIDTH, ForecastStudy.HEIGHT, scene[0], 0.05));
      double perKelvin = ForecastStudy.idealScorePerKelvin(scene[0], tau);
      for (double strength : strengths) {
        int[] cycles = ForecastStudy.sortedCycles(settings, strength * design, tau, scene[0], runs);
        double found = Arrays.stream(cycles).filter(k -> k <= cap).count() / (double) runs;
        double mean = Arrays.stream(cycles).map(k -> Math.min(k, cap)).average().orElseThrow();
        double squares =
            Arrays.stream(cycles).mapToDouble(k -> Math.pow(Math.min(k, cap) - mean, 2)).sum();
        double drift = strength * design * perKelvin;
        double least = least(error, Math.min(found, 1 - 1e-12), drift);
        double lawful = BestLawfulRule.meanCycles(FIRST, cap, error, found, drift);
        double unknown = BestLawfulRule.meanCycles(FIRST, cap, errorOfAll, found, drift);
        System.out.printf(
            Locale.ROOT,
            "| %.1f | %.2f | %.1f | %.3f | %.2f | %.2f | %.2f | %.2f | %.2f | %.2f | %.2f | %.2f |%n",
            scene[0],
            scene[1],
            strength,
            found,
            mean,
            Math.sqrt(squares / (runs - 1.0) / runs),
            least,
            mean / least,
            lawful,
            mean / lawful,
            unknown,
            mean / unknown);
      }
    }
  }

  /** Error of a single test when all widths and delays are searched in known white noise. */
  private static double errorOfAll(DetectionSettings settings) {
    double none = Double.POSITIVE_INFINITY;
    DelayArc arc = DelayArc.of(settings, new PooledNoise(1, 1, 0, none, none, 1, 0, none, false));
    double[] sigmas = settings.filterSigmasPixels();
    double[] degrees = new double[sigmas.length];
    Arrays.fill(degrees, none);
    return NormalScore.upperTail(
        IdealObserver.threshold(
            new FieldFamily(
                ForecastStudy.WIDTH,
                ForecastStudy.HEIGHT,
                sigmas,
                degrees,
                arc.radians(),
                arc.directions()),
            0.05));
  }

  private static double least(double error, double found, double drift) {
    double missed = 1 - found;
    double least =
        (found * Math.log(found / error) + missed * Math.log(missed / (1 - error)))
            / (drift * drift / 2);
    return Math.max(FIRST, least);
  }

  private static void line(
      LookBounds bounds, double error, int cap, double strength, double drift) {
    double[] crossing = bounds.crossingProbabilities(drift);
    double found = 0;
    double cycles = 0;
    for (int j = 0; j < crossing.length; j++) {
      found += crossing[j];
      cycles += crossing[j] * (FIRST + j);
    }
    found = Math.min(1 - 1e-12, found);
    cycles += (1 - found) * cap;
    double lawful = least(error, found, drift);
    System.out.printf(
        Locale.ROOT,
        "| %.0e | %.1f | %.3f | %.1f | %.1f | %.2f |%n",
        error,
        strength,
        found,
        cycles,
        lawful,
        cycles / lawful);
  }

  /** Score per root of a cycle that is found by the cap with 95 %. */
  private static double design(LookBounds bounds, int cap) {
    double low = 0;
    double high = 20 / Math.sqrt(cap);
    for (int i = 0; i < 40; i++) {
      double middle = (low + high) / 2;
      double sum = 0;
      for (double p : bounds.crossingProbabilities(middle)) {
        sum += p;
      }
      if (sum < 0.95) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return high;
  }
}
