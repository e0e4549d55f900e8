package railglow.thermal;

import java.util.List;
import java.util.Locale;

/**
 * Prints how often two sources are told apart, equal ones and one to five, at distances in full
 * widths at half height of a spot of two pixels, white noise. Argument: runs per line (100).
 */
public final class TwoSourcesStudy {
  private static final int WIDTH = 96;
  private static final int HEIGHT = 72;
  private static final int CYCLES = 12;
  private static final double SIGMA = 2;
  private static final double FULL_WIDTH = 2 * Math.sqrt(2 * Math.log(2)) * SIGMA;
  private static final double NOISE = 0.014;
  private static final double NEAR = 2;

  private TwoSourcesStudy() {}

  public static void main(String[] args) {
    int runs = args.length > 0 ? Integer.parseInt(args[0]) : 100;
    System.out.println(
        "| stronger to weaker | weaker alone scores | full widths apart | runs | both called"
            + " | weaker off by px | more called |");
    System.out.println("|---|---|---|---|---|---|---|");
    for (double ratio : new double[] {1, 5}) {
      for (double score : new double[] {12, 25}) {
        for (double apart : new double[] {1.2, 1.5, 2}) {
          line(runs, ratio, score, apart);
        }
      }
    }
  }

  private static void line(int runs, double ratio, double score, double apart) {
    double rise = score * NOISE / (SIGMA * Math.sqrt(Math.PI * CYCLES));
    int both = 0;
    int more = 0;
    double squares = 0;
    for (int run = 0; run < runs; run++) {
      double turn = run * 2.399963;
      double column = 47 + apart * FULL_WIDTH * Math.cos(turn);
      double row = 35 + apart * FULL_WIDTH * Math.sin(turn);
      List<HeatSource> called = called(run, ratio * rise, rise, column, row);
      HeatSource strong = nearest(called, 47, 35);
      HeatSource weak = nearest(called, column, row);
      if (strong != null && weak != null && strong != weak) {
        both++;
        squares += Math.pow(weak.column() - column, 2) + Math.pow(weak.row() - row, 2);
      }
      more += called.size() > 2 ? 1 : 0;
    }
    System.out.printf(
        Locale.ROOT,
        "| %.0f | %.0f | %.1f | %d | %d | %.2f | %d |%n",
        ratio,
        score,
        apart,
        runs,
        both,
        Math.sqrt(squares / Math.max(1, both)),
        more);
  }

  private static List<HeatSource> called(
      int run, double strong, double weak, double column, double row) {
    WhiteCycles cycles =
        new WhiteCycles(WIDTH, HEIGHT, NOISE, 70_000 + run)
            .with(new WhiteCycles.Source(47, 35, SIGMA, strong, 0), 0, 2)
            .with(new WhiteCycles.Source(column, row, SIGMA, weak, 0), 0, 2);
    Detector detector = new Detector(DetectionSettings.usual(2, 0, 0.05, 4, CYCLES), WIDTH, HEIGHT);
    for (int k = 0; k < CYCLES; k++) {
      detector.addCycle(cycles.next());
    }
    return detector.look().sources();
  }

  /** Nearer than {@value #NEAR} pixels; null when there is none. */
  private static HeatSource nearest(List<HeatSource> called, double column, double row) {
    HeatSource best = null;
    double least = NEAR;
    for (HeatSource source : called) {
      double distance = Math.hypot(source.column() - column, source.row() - row);
      if (distance < least) {
        least = distance;
        best = source;
      }
    }
    return best;
  }
}
