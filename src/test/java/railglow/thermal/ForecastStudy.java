package railglow.thermal;

import java.util.Arrays;
import java.util.Locale;

/**
 * Forecast against achieved median time to the first call, for the table of docs/detection.md.
 * Arguments: runs a line.
 */
final class ForecastStudy {
  static final int WIDTH = 96;
  static final int HEIGHT = 72;
  static final double PERIOD = 2;
  private static final int CAP = 60;
  private static final double NOISE = 0.05;

  private ForecastStudy() {}

  /** Cycles to the first call near the source; the cap and one when there is none. */
  static int cyclesToFind(
      DetectionSettings settings, double rise, double tau, double blur, long seed) {
    WhiteCycles cycles = cycles(rise, tau, blur, seed);
    Detector detector = new Detector(settings, WIDTH, HEIGHT);
    for (int k = 1; k <= settings.maxCycles(); k++) {
      detector.addCycle(cycles.next());
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

  static double median(DetectionSettings settings, double rise, double tau, double blur, int runs) {
    int[] found = sortedCycles(settings, rise, tau, blur, runs);
    return (found[(runs - 1) / 2] + found[runs / 2]) / 2.0;
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
    DetectionSettings settings = DetectionSettings.usual(PERIOD, 0, 0.05, 4, CAP);
    System.out.println("| blur px | tau/P | rise mK | forecast s | achieved median s | ratio |");
    System.out.println("|---|---|---|---|---|---|");
    for (double[] scene : new double[][] {{2, 0}, {2, 0.25}, {2, 1}, {3, 0.25}}) {
      double tau = scene[1] * PERIOD;
      Forecast forecast = forecast(settings, scene[0], tau);
      double weakest = forecast.smallestRiseKelvin(CAP);
      for (double strength : new double[] {1, 1.5, 2.2, 4}) {
        double rise = strength * weakest;
        double predicted = forecast.secondsToFind(rise, 0.5);
        double achieved = median(settings, rise, tau, scene[0], runs) * PERIOD;
        System.out.printf(
            Locale.ROOT,
            "| %.1f | %.2f | %.1f | %.0f | %.0f | %.2f |%n",
            scene[0],
            scene[1],
            1e3 * rise,
            predicted,
            achieved,
            predicted / achieved);
      }
    }
  }
}
