package railglow.thermal;

import java.util.Locale;

/**
 * Prints how true the stated position and its ellipse, the swing and the settled rise and their
 * intervals are, at a fixed number of cycles and when the run stops at the first call. White noise.
 * Argument: runs per line (200).
 */
public final class EstimateStudy {
  private static final double PERIOD = 2;
  private static final double QUARTER_NOISE = 0.05 / Math.sqrt(12.5);
  private static final int WIDTH = 72;
  private static final int HEIGHT = 56;
  private static final int CAP = 30;
  private static final double CHI_SQUARED_95_OF_2 = 5.991464547107979;

  private EstimateStudy() {}

  public static void main(String[] args) {
    int runs = args.length > 0 ? Integer.parseInt(args[0]) : 200;
    System.out.printf(
        "Stated position, swing and settled rise against the truth, %d x %d, 50 mK white, %d runs a"
            + " line%n%n",
        WIDTH, HEIGHT, runs);
    System.out.println(
        "| stop | score | tau/P | called | position rms / bound | ellipses cover | median swing error"
            + " | swing intervals cover | median rise error | rise intervals cover | mean cycles |");
    System.out.println("|---|---|---|---|---|---|---|---|---|---|---|");
    int line = 0;
    for (double tau : new double[] {0, 0.25, 1}) {
      for (double score : new double[] {8, 16, 40}) {
        System.out.println(Line.of(1000 * line++, runs, score, tau, false));
      }
    }
    for (double tau : new double[] {0, 0.25, 1}) {
      for (double score : new double[] {6.5, 9, 13, 26, 60}) {
        System.out.println(Line.of(1000 * line++, runs, score, tau, true));
      }
    }
  }

  /**
   * What came of runs of one kind.
   *
   * @param stopAtCall whether they ended at the first call
   * @param called in how many the source was called
   * @param positionSquares mean square of the error of place, over the bound's
   * @param inEllipse in how many the place was in the stated ellipse
   * @param swingError median, relative
   * @param swingCovered in how many the stated interval held the swing
   * @param riseError median, relative
   * @param riseCovered in how many the stated interval held the settled rise
   */
  record Line(
      boolean stopAtCall,
      double score,
      double tauPeriods,
      int called,
      double positionSquares,
      int inEllipse,
      double swingError,
      int swingCovered,
      double riseError,
      int riseCovered,
      double meanCycles) {

    static Line of(int firstRun, int runs, double score, double tauPeriods, boolean stopAtCall) {
      double blur = 2;
      double tau = tauPeriods * PERIOD;
      FirstOrderResponse g = FirstOrderResponse.of(tau, PERIOD);
      double gain = blur * Math.sqrt(Math.PI);
      double swing = score * QUARTER_NOISE / (gain * Math.sqrt(CAP));
      double rise = swing / g.size();
      DetectionSettings settings = DetectionSettings.usual(PERIOD, 0, 0.05, 4, CAP);
      int called = 0;
      int swingCovered = 0;
      int riseCovered = 0;
      int inEllipse = 0;
      double squares = 0;
      double[] swings = new double[runs];
      double[] rises = new double[runs];
      double cyclesUsed = 0;
      for (int run = firstRun; run < firstRun + runs; run++) {
        double column = WIDTH / 2 + (run % 7) / 7.0;
        double row = HEIGHT / 2 + (run % 5) / 5.0;
        WhiteCycles cycles =
            new WhiteCycles(WIDTH, HEIGHT, QUARTER_NOISE, 90_000 + run)
                .with(new WhiteCycles.Source(column, row, blur, rise, tau), 0, PERIOD);
        Look look = run(settings, cycles, stopAtCall);
        HeatSource source = look.sources().isEmpty() ? null : look.sources().get(0);
        if (source != null && Math.hypot(source.column() - column, source.row() - row) < 4) {
          double dx = source.column() - column;
          double dy = source.row() - row;
          // the Cramer-Rao bound, sqrt(2/pi) noise / amplitude per axis (Condon, PASP 109, 1997,
          // 166)
          double bound = Math.sqrt(2 / Math.PI) * QUARTER_NOISE / Math.sqrt(look.cycles()) / swing;
          squares += (dx * dx + dy * dy) / (2 * bound * bound);
          inEllipse += mahalanobis(source, dx, dy) <= CHI_SQUARED_95_OF_2 ? 1 : 0;
          swingCovered += source.swingInterval95().contains(swing) ? 1 : 0;
          riseCovered += source.riseInterval95().contains(rise) ? 1 : 0;
          swings[called] = source.swingKelvin() / swing - 1;
          rises[called] = source.riseKelvin() / rise - 1;
          called++;
          cyclesUsed += look.cycles();
        }
      }
      return new Line(
          stopAtCall,
          score,
          tauPeriods,
          called,
          squares / called,
          inEllipse,
          median(swings, called),
          swingCovered,
          median(rises, called),
          riseCovered,
          cyclesUsed / called);
    }

    @Override
    public String toString() {
      return String.format(
          Locale.ROOT,
          "| %s | %.1f | %.2f | %d | %.3f | %.3f | %+.3f | %.3f | %+.3f | %.3f | %.1f |",
          stopAtCall ? "at call" : "at cap",
          score,
          tauPeriods,
          called,
          Math.sqrt(positionSquares),
          inEllipse / (double) called,
          swingError,
          swingCovered / (double) called,
          riseError,
          riseCovered / (double) called,
          meanCycles);
    }
  }

  private static double median(double[] values, int n) {
    double[] sorted = java.util.Arrays.copyOf(values, n);
    java.util.Arrays.sort(sorted);
    return n == 0 ? Double.NaN : sorted[n / 2];
  }

  private static double mahalanobis(HeatSource s, double dx, double dy) {
    double determinant = s.columnVariance() * s.rowVariance() - s.covariance() * s.covariance();
    return (s.rowVariance() * dx * dx + s.columnVariance() * dy * dy - 2 * s.covariance() * dx * dy)
        / determinant;
  }

  private static Look run(DetectionSettings settings, WhiteCycles cycles, boolean stopAtCall) {
    Detector detector = new Detector(settings, WIDTH, HEIGHT);
    for (int k = 1; k <= CAP; k++) {
      detector.addCycle(cycles.next());
      if (stopAtCall && k >= settings.minCycles()) {
        Look look = detector.look();
        if (!look.sources().isEmpty()) {
          return look;
        }
      }
    }
    return detector.look();
  }
}
