package railglow.thermal;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import railglow.report.draw.Paint;
import railglow.report.draw.Png;

/**
 * Draws the pictures of docs/detection.md: power curves, what the stated intervals cover, and how
 * often a source near the stated upper limit is called. Arguments: runs per point (100), folder
 * (docs/figures).
 */
public final class DetectionFigures {
  private static final int BLUE = 0x1F4E79;
  private static final int RED = 0xA63A1E;
  private static final int GREEN = 0x2E7D4F;
  private static final double POINT = 0.02;

  private DetectionFigures() {}

  public static void main(String[] args) throws IOException {
    int runs = args.length > 0 ? Integer.parseInt(args[0]) : 100;
    Path folder = Path.of(args.length > 1 ? args[1] : "docs/figures");
    Files.createDirectories(folder);
    write(folder, "power.png", power(runs));
    write(folder, "coverage.png", coverage(runs));
    write(folder, "upper-limit.png", upperLimit(runs));
  }

  private static void write(Path folder, String name, Chart chart) throws IOException {
    Files.write(folder.resolve(name), Png.of(Paint.picture(chart.sketch(), 1)));
    System.out.println(folder.resolve(name));
  }

  private static Chart power(int runs) {
    Chart chart =
        new Chart(
            "Share of runs that call a source of two pixels (" + runs + " runs a point)",
            "rise, mK",
            "95 % dashed",
            0,
            16,
            0,
            1);
    chart.axes().level(0.95);
    power(chart, runs, 5, BLUE, new double[] {5, 6.5, 8, 9.5, 11, 12.5, 14});
    power(chart, runs, 30, RED, new double[] {2, 2.5, 3, 3.5, 4, 4.5, 5, 5.5});
    return chart;
  }

  /** Looks after every cycle, against one look of the observer who knows all but the place. */
  private static void power(Chart chart, int runs, int cap, int rgb, double[] milliKelvin) {
    DetectionSettings settings = DetectionSettings.usual(2, 0, 0.05, 4, cap);
    double[][] share = new double[2][milliKelvin.length];
    double[] low = new double[milliKelvin.length];
    double[] high = new double[milliKelvin.length];
    for (int k = 0; k < milliKelvin.length; k++) {
      int called = 0;
      int ideal = 0;
      for (int run = 0; run < runs; run++) {
        long seed = 200_000 + 1000 * k + run;
        double rise = 1e-3 * milliKelvin[k];
        called += ForecastStudy.cyclesToFind(settings, rise, 0, 2, seed) <= cap ? 1 : 0;
        ideal += ForecastStudy.ideal(cap, rise, 0, 2, seed) ? 1 : 0;
      }
      share[0][k] = called / (double) runs;
      share[1][k] = ideal / (double) runs;
      low[k] = FalseAlarmStudy.bound(called, runs, 0.025);
      high[k] = FalseAlarmStudy.bound(called, runs, 0.975);
    }
    String after = ", " + 2 * cap + " s";
    chart.curve("", rgb, false, milliKelvin, share[0]);
    chart.points("detector" + after, rgb, milliKelvin, share[0], low, high);
    chart.curve("ideal observer" + after, rgb, true, milliKelvin, share[1]);
  }

  private static Chart coverage(int runs) {
    Chart chart =
        new Chart(
            "Share of stated 95 % intervals that hold the truth (" + runs + " runs a point)",
            "signal to noise ratio at 30 cycles; time constant a quarter period",
            "goal: 93 to 97 %, shaded",
            5,
            45,
            0.7,
            1);
    chart.band(0.93, 0.97).axes().level(0.95);
    double[] scores = {8, 12, 16, 24, 40};
    double[][] held = new double[3][scores.length];
    double[][] low = new double[3][scores.length];
    double[][] high = new double[3][scores.length];
    double[][] at = new double[3][scores.length];
    for (int k = 0; k < scores.length; k++) {
      EstimateStudy.Line line =
          EstimateStudy.Line.of(50_000 + 1000 * k, runs, scores[k], 0.25, false);
      int[] hits = {line.swingCovered(), line.riseCovered(), line.inEllipse()};
      for (int j = 0; j < hits.length; j++) {
        held[j][k] = hits[j] / (double) line.called();
        low[j][k] = FalseAlarmStudy.bound(hits[j], line.called(), 0.025);
        high[j][k] = FalseAlarmStudy.bound(hits[j], line.called(), 0.975);
        at[j][k] = scores[k] + 0.5 * (j - 1);
      }
    }
    chart.points("swing in step with the pulse", BLUE, at[0], held[0], low[0], high[0]);
    chart.points("settled rise", RED, at[1], held[1], low[1], high[1]);
    return chart.points("place (95 % ellipse)", GREEN, at[2], held[2], low[2], high[2]);
  }

  private static Chart upperLimit(int runs) {
    Chart chart =
        new Chart(
            "Share of sources called that the empty picture's limit excludes (" + runs + " runs)",
            "rise over the stated upper limit",
            "95 % dashed",
            0.4,
            1.4,
            0,
            1);
    chart.axes().level(0.95);
    double[] times = {0.5, 0.6, 0.7, 0.8, 0.9, 1.0, 1.1, 1.3};
    double[] blurs = {1.5, 2.5};
    for (int b = 0; b < blurs.length; b++) {
      double[] called = new double[times.length];
      double[] low = new double[times.length];
      double[] high = new double[times.length];
      double[] at = new double[times.length];
      for (int k = 0; k < times.length; k++) {
        int hits = runs - UpperLimitStudy.missed(runs, blurs[b], times[k]);
        called[k] = hits / (double) runs;
        low[k] = FalseAlarmStudy.bound(hits, runs, 0.025);
        high[k] = FalseAlarmStudy.bound(hits, runs, 0.975);
        at[k] = times[k] + (b - 0.5) * POINT / 2;
      }
      int rgb = b == 0 ? BLUE : GREEN;
      chart.curve("", rgb, false, at, called);
      chart.points("source of " + blurs[b] + " pixels", rgb, at, called, low, high);
    }
    return chart;
  }
}
