package railglow.thermal;

import java.util.Arrays;
import java.util.Locale;
import java.util.function.Supplier;

/**
 * Forecast against achieved median time to the first call, for the table of docs/detection.md, in
 * white noise and among stripes. Arguments: runs a line; how many times the smallest rise (all).
 */
final class ForecastStudy {
  static final int WIDTH = 96;
  static final int HEIGHT = 72;
  static final double PERIOD = 2;
  private static final int CAP = 60;
  private static final double NOISE = 0.05;

  /** What a pixel of NoiseScene, 1 K a frame at 12 frames a second, is here. */
  private static final double STRIPES_NOISE = 0.05 * Math.sqrt(12.0 / 25);

  private ForecastStudy() {}

  /** Cycles to the first call near the source; the cap and one when there is none. */
  static int cyclesToFind(
      DetectionSettings settings, double rise, double tau, double blur, long seed) {
    return cyclesToFind(settings, blur, cycles(rise, tau, blur, seed)::next);
  }

  private static int cyclesToFind(
      DetectionSettings settings, double blur, Supplier<QuarterMeans> cycles) {
    Detector detector = new Detector(settings, WIDTH, HEIGHT);
    for (int k = 1; k <= settings.maxCycles(); k++) {
      detector.addCycle(cycles.get());
      if (k >= settings.minCycles()) {
        for (HeatSource source : detector.look().sources()) {
          if (Math.hypot(source.column() - 40.3, source.row() - 30.6) < 3 * blur) {
            return k;
          }
        }
      }
    }
    return settings.maxCycles() + 1;
  }

  private static WhiteCycles cycles(double rise, double tau, double blur, long seed) {
    return new WhiteCycles(WIDTH, HEIGHT, NOISE / Math.sqrt(12.5), seed)
        .with(new WhiteCycles.Source(40.3, 30.6, blur, rise, tau), 0, PERIOD);
  }

  /** The same source among rows and columns that move as wholes, half as far as a pixel. */
  private static int cyclesInStripes(
      DetectionSettings settings, double rise, double tau, double blur, int seed) {
    NoiseScene stripes = new NoiseScene(NoiseScene.Kind.STRIPES, WIDTH, HEIGHT, seed);
    WhiteCycles signal =
        new WhiteCycles(WIDTH, HEIGHT, 0, 0)
            .with(new WhiteCycles.Source(40.3, 30.6, blur, rise / STRIPES_NOISE, tau), 0, PERIOD);
    return cyclesToFind(
        settings, blur, () -> DisturbedSensitivityStudy.sum(stripes.next(), signal.next()));
  }

  /** Whether the ideal observer, who looks once after these cycles, sees the same source there. */
  static boolean ideal(int count, double rise, double tau, double blur, long seed) {
    WhiteCycles cycles = cycles(rise, tau, blur, seed);
    IdealObserver observer =
        new IdealObserver(
            WIDTH, HEIGHT, blur, FirstOrderResponse.of(tau, PERIOD), NOISE / Math.sqrt(12.5));
    for (int k = 0; k < count; k++) {
      observer.add(cycles.next());
    }
    return observer.shareOfThreshold(40.3, 30.6) >= 1;
  }

  static Forecast forecast(DetectionSettings settings, double blur, double tau) {
    return Forecast.of(settings, WIDTH, HEIGHT, PulseNoise.white(NOISE, 25), blur, tau);
  }

  /** Score per root of a cycle and kelvin of who knows place, width and delay. */
  static double idealScorePerKelvin(double blur, double tau) {
    double size = FirstOrderResponse.of(tau, PERIOD).size();
    return size * blur * Math.sqrt(Math.PI) * Math.sqrt(12.5) / NOISE;
  }

  /** Of many runs, which know nothing of one another: on all cores the same numbers come out. */
  static int[] sortedCycles(
      DetectionSettings settings, double rise, double tau, double blur, int runs) {
    int[] found = new int[runs];
    Arrays.parallelSetAll(found, i -> cyclesToFind(settings, rise, tau, blur, 100 + i));
    Arrays.sort(found);
    return found;
  }

  public static void main(String[] arguments) {
    int runs = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 21;
    double[] strengths =
        arguments.length > 1
            ? new double[] {Double.parseDouble(arguments[1])}
            : new double[] {1, 1.5, 2.2, 4};
    System.out.println(
        "| noise | blur px | tau/P | rise mK | forecast s | achieved median s | ratio |");
    System.out.println("|---|---|---|---|---|---|---|");
    for (double[] scene : new double[][] {{2, 0}, {2, 0.25}, {2, 1}, {3, 0.25}}) {
      lines("white", PulseNoise.white(NOISE, 25), scene[0], scene[1], strengths, runs);
    }
    for (double[] scene : new double[][] {{2, 0}, {3, 0.25}}) {
      PulseNoise noise = PulseNoise.white(NOISE, 25).withLines(NOISE / 2, NOISE / 2);
      lines("stripes", noise, scene[0], scene[1], strengths, runs);
    }
  }

  private static void lines(
      String name, PulseNoise noise, double blur, double tauPeriods, double[] strengths, int runs) {
    DetectionSettings settings = DetectionSettings.usual(PERIOD, 0, 0.05, 4, CAP);
    double tau = tauPeriods * PERIOD;
    Forecast forecast = Forecast.of(settings, WIDTH, HEIGHT, noise, blur, tau);
    double weakest = forecast.smallestRiseKelvin(CAP);
    for (double strength : strengths) {
      double rise = strength * weakest;
      int[] found = new int[runs];
      Arrays.parallelSetAll(
          found,
          i ->
              noise.rowVariancePart() > 0
                  ? cyclesInStripes(settings, rise, tau, blur, 100 + i)
                  : cyclesToFind(settings, rise, tau, blur, 100 + i));
      Arrays.sort(found);
      double predicted = forecast.secondsToFind(rise, 0.5);
      double achieved = (found[(runs - 1) / 2] + found[runs / 2]) / 2.0 * PERIOD;
      System.out.printf(
          Locale.ROOT,
          "| %s | %.1f | %.2f | %.1f | %.0f | %.0f | %.2f |%n",
          name,
          blur,
          tauPeriods,
          1e3 * rise,
          predicted,
          achieved,
          predicted / achieved);
    }
  }
}
