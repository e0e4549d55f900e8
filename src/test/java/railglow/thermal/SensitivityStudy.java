package railglow.thermal;

import java.util.Arrays;
import java.util.Locale;

/**
 * Prints the smallest rise that is found with 95 % power beside the ideal observer's, white noise.
 * Arguments: runs per line (100), width (128), height (96), longest run in cycles (30).
 */
public final class SensitivityStudy {
  private static final double PERIOD = 2;
  private static final double FRAME_NOISE = 0.05;
  private static final double FRAMES_PER_QUARTER = 12.5;
  private static final double QUARTER_NOISE = FRAME_NOISE / Math.sqrt(FRAMES_PER_QUARTER);

  private SensitivityStudy() {}

  public static void main(String[] args) {
    int runs = args.length > 0 ? Integer.parseInt(args[0]) : 100;
    int width = args.length > 1 ? Integer.parseInt(args[1]) : 128;
    int height = args.length > 2 ? Integer.parseInt(args[2]) : 96;
    int longest = args.length > 3 ? Integer.parseInt(args[3]) : 30;
    System.out.printf(
        "Smallest rise with 95 %% power, %d x %d, 25 Hz, 50 mK white, period 2 s, %d runs a line%n%n",
        width, height, runs);
    System.out.println("| seconds | blur px | tau/P | found mK | ideal mK | ratio | forecast mK |");
    System.out.println("|---|---|---|---|---|---|---|");
    for (int cap : new int[] {5, 30, 300}) {
      for (double blur : new double[] {1.5, 2, 3}) {
        if (cap <= longest && (blur == 2 || cap == 30)) {
          line(runs, width, height, cap, blur, 0);
        }
      }
    }
    for (double tau : new double[] {0.1, 0.3, 1, 3, 10}) {
      line(runs, width, height, Math.min(30, longest), 2, tau);
    }
  }

  /**
   * Of runs with a source of a guessed rise the largest share of the score asked for that was
   * reached at it, by the detector and by the ideal observer.
   */
  private record Shares(double guess, double[] found, double[] ideal) {}

  private static Shares shares(
      int runs, int width, int height, int cap, double blur, double tauPeriods) {
    DetectionSettings settings = settings(cap);
    FirstOrderResponse g = FirstOrderResponse.of(tauPeriods * PERIOD, PERIOD);
    double guess =
        6.6 * QUARTER_NOISE / (g.size() * blur * Math.sqrt(Math.PI) * Math.sqrt((double) cap));
    double[] found = new double[runs];
    double[] ideal = new double[runs];
    for (int run = 0; run < runs; run++) {
      double column = width / 2 + (run % 7) / 7.0;
      double row = height / 2 + (run % 5) / 5.0;
      WhiteCycles cycles =
          new WhiteCycles(width, height, QUARTER_NOISE, 50_000 + run)
              .with(
                  new WhiteCycles.Source(column, row, blur, guess, tauPeriods * PERIOD), 0, PERIOD);
      IdealObserver observer = new IdealObserver(width, height, blur, g, QUARTER_NOISE);
      found[run] = shareFound(settings, width, height, cap, cycles, observer, column, row);
      ideal[run] = observer.shareOfThreshold(column, row);
    }
    return new Shares(guess, found, ideal);
  }

  private static DetectionSettings settings(int cap) {
    return DetectionSettings.usual(PERIOD, 0, 0.05, Math.min(4, cap), cap);
  }

  private static void line(
      int runs, int width, int height, int cap, double blur, double tauPeriods) {
    Shares shares = shares(runs, width, height, cap, blur, tauPeriods);
    double found = power95(shares.guess(), shares.found());
    double ideal = power95(shares.guess(), shares.ideal());
    double forecast =
        Forecast.of(
                settings(cap),
                width,
                height,
                PulseNoise.white(FRAME_NOISE, 4 * FRAMES_PER_QUARTER / PERIOD),
                blur,
                tauPeriods * PERIOD)
            .smallestRiseKelvin(cap);
    System.out.printf(
        Locale.ROOT,
        "| %.0f | %.1f | %.1f | %.2f | %.2f | %.3f | %.2f |%n",
        cap * PERIOD,
        blur,
        tauPeriods,
        1000 * found,
        1000 * ideal,
        found / ideal,
        1000 * forecast);
  }

  /** Largest share of the score asked for, over the looks of the last third and the first few. */
  private static double shareFound(
      DetectionSettings settings,
      int width,
      int height,
      int cap,
      WhiteCycles cycles,
      IdealObserver observer,
      double column,
      double row) {
    Detector detector = new Detector(settings, width, height);
    double share = 0;
    for (int k = 1; k <= cap; k++) {
      QuarterMeans q = cycles.next();
      observer.add(q);
      detector.addCycle(q);
      if (k >= settings.minCycles() && (cap <= 30 || k > cap - 20 && k % 3 == 0 || k == cap)) {
        Plane scores = detector.look().significance();
        for (int y = (int) row - 5; y <= row + 5; y++) {
          for (int x = (int) column - 5; x <= column + 5; x++) {
            share = Math.max(share, scores.at(x, y) / detector.scoreToCall());
          }
        }
      }
    }
    return share;
  }

  /**
   * The rise found in 95 % of the runs, from the shares of the threshold reached at a guess: a
   * share has mean m and deviation d; at r times the guess its mean is r m, and r m - 1.645 d must
   * be 1.
   */
  static double power95(double guess, double[] shares) {
    double mean = Arrays.stream(shares).average().orElseThrow();
    double variance = Arrays.stream(shares).map(x -> (x - mean) * (x - mean)).sum();
    double deviation = Math.sqrt(variance / (shares.length - 1));
    return guess * (1 + 1.6449 * deviation) / mean;
  }
}
