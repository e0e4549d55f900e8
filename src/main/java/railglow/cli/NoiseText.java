package railglow.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import railglow.camera.noise.BestPeriod;
import railglow.camera.noise.NoiseFigures;
import railglow.units.Quantity;
import railglow.units.Unit;

/** Measured noise in words, with a small plot of its Allan deviation. */
final class NoiseText {
  private static final double[] BODY_SECONDS = {0.1, 0.5, 2};
  private static final double SHORTEST_PERIOD = 0.5;
  private static final double LONGEST_PERIOD = 60;
  private static final int MOST_STARS = 40;
  private final NoiseFigures figures;
  private final boolean kelvin;
  private final List<String> lines = new ArrayList<>();

  private NoiseText(NoiseFigures figures, boolean kelvin) {
    this.figures = figures;
    this.kelvin = kelvin;
  }

  /**
   * @param kelvin whether the amplitudes are in kelvin; else in counts
   */
  static List<String> of(NoiseFigures figures, boolean kelvin) {
    NoiseText text = new NoiseText(figures, kelvin);
    text.amplitudes();
    text.plot();
    text.periods();
    return text.lines;
  }

  private void amplitudes() {
    add(
        "  noise    %s a pixel, %s from frame to frame, rows %s, columns %s, whole frame %s",
        amount(figures.temporal()),
        amount(figures.frameToFrame()),
        amount(figures.rowTogether()),
        amount(figures.columnTogether()),
        amount(figures.frameTogether()));
    add(
        "           correlation with the next frame %.2f, the pixel beside %.2f, the one below %.2f",
        figures.nextFrameCorrelation(),
        figures.horizontalCorrelation(),
        figures.verticalCorrelation());
  }

  /** Allan deviation against averaging time, a bar a line, on a logarithmic scale. */
  private void plot() {
    double[] seconds = figures.averagingSeconds();
    double[] deviations = figures.allanDeviations();
    double most = 0;
    double least = Double.POSITIVE_INFINITY;
    for (double deviation : deviations) {
      most = Math.max(most, deviation);
      least = Math.min(least, deviation);
    }
    add("           Allan deviation of a pixel against averaging time");
    for (int i = 0; i < seconds.length; i++) {
      double share =
          most > least && least > 0 ? Math.log(deviations[i] / least) / Math.log(most / least) : 1;
      int stars = 1 + (int) Math.round((MOST_STARS - 1) * share);
      add("  %7.2f s  %-10s %s", seconds[i], amount(deviations[i]), "*".repeat(stars));
    }
  }

  private void periods() {
    double told = 2 * figures.averagingSeconds()[figures.averagingSeconds().length - 1];
    for (double body : BODY_SECONDS) {
      double best = BestPeriod.find(figures, body, SHORTEST_PERIOD, LONGEST_PERIOD);
      if (Double.isNaN(best)) {
        continue;
      }
      boolean atTheEnd = best > 0.95 * told && told < LONGEST_PERIOD;
      add(
          "  period   best for a part that warms in %s: %s%s",
          Quantity.format(body, Unit.SECOND),
          Quantity.format(Math.round(best * 10) / 10.0, Unit.SECOND),
          atTheEnd ? " or longer; --watch longer to tell" : "");
    }
  }

  private String amount(double value) {
    return kelvin
        ? Quantity.format(value, Unit.KELVIN)
        : String.format(Locale.ROOT, "%.2f counts", value);
  }

  private void add(String format, Object... values) {
    lines.add(String.format(Locale.ROOT, format, values));
  }
}
