package railglow.thermal;

import java.util.Locale;

/**
 * Prints how often a source is missed whose rise is a multiple of the upper limit stated for the
 * empty picture, white noise. Argument: runs per line (200).
 */
final class UpperLimitStudy {
  private static final int WIDTH = 48;
  private static final int HEIGHT = 40;
  private static final int CYCLES = 8;

  private UpperLimitStudy() {}

  public static void main(String[] args) {
    int runs = args.length > 0 ? Integer.parseInt(args[0]) : 200;
    System.out.println("| blur px | rise over limit | runs | missed | rate | 95 % bounds |");
    System.out.println("|---|---|---|---|---|---|");
    for (double blur : new double[] {1.5, 2.5}) {
      for (double times : new double[] {0.8, 1}) {
        int missed = missed(runs, blur, times);
        System.out.printf(
            Locale.ROOT,
            "| %.1f | %.1f | %d | %d | %.1f %% | %.1f to %.1f %% |%n",
            blur,
            times,
            runs,
            missed,
            100.0 * missed / runs,
            100 * FalseAlarmStudy.bound(missed, runs, 0.025),
            100 * FalseAlarmStudy.bound(missed, runs, 0.975));
      }
    }
  }

  /** Runs in which a source of so many times the limit is not called. */
  static int missed(int runs, double blur, double times) {
    int missed = 0;
    for (int run = 0; run < runs; run++) {
      double limit = look(400 + run, 0, blur).upperLimitKelvin();
      missed += look(100_800 + run, times * limit, blur).sources().isEmpty() ? 1 : 0;
    }
    return missed;
  }

  private static Look look(long seed, double rise, double blur) {
    WhiteCycles cycles = new WhiteCycles(WIDTH, HEIGHT, 0.014, seed);
    if (rise > 0) {
      cycles.with(
          new WhiteCycles.Source(20 + seed % 7 / 7.0, 18 + seed % 5 / 5.0, blur, rise, 0), 0, 2);
    }
    Detector detector = new Detector(DetectionSettings.usual(2, 0, 0.05, 4, CYCLES), WIDTH, HEIGHT);
    for (int k = 0; k < CYCLES; k++) {
      detector.addCycle(cycles.next());
    }
    return detector.look();
  }
}
