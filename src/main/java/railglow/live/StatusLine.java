package railglow.live;

import java.util.Locale;
import railglow.observed.OutputState;
import railglow.run.FindingsMaker;
import railglow.run.RunProgress;
import railglow.thermal.HeatSource;
import railglow.units.Probability;

/** One line that says how a run stands. Pure text, no control codes. */
public final class StatusLine {
  private StatusLine() {}

  public static String of(RunProgress progress) {
    StringBuilder line = new StringBuilder();
    add(line, "cycle %d/%d", progress.cyclesDone(), progress.cyclesPlanned());
    add(
        line,
        "  %.0f s of at most %.0f s",
        Math.max(0, progress.elapsedSeconds()),
        progress.longestSeconds());
    line.append("  ").append(output(progress.output()));
    if (!Double.isNaN(progress.volts())) {
      add(line, " %.3f V %.4f A", progress.volts(), progress.amperes());
    }
    if (!Double.isNaN(progress.hottestCelsius())) {
      add(line, "  hottest %.1f degC", progress.hottestCelsius());
    } else if (!Double.isNaN(progress.hottestRiseKelvin())) {
      add(line, "  largest rise %.2f K", progress.hottestRiseKelvin());
    }
    if (progress.strongest() != null) {
      line.append("  ").append(best(progress.strongest(), progress.unit()));
    }
    return line.toString();
  }

  private static String output(OutputState state) {
    return switch (state) {
      case ON -> "ON";
      case PROVEN_OFF -> "off";
      // each change is unknown until it is read back; a lasting one ends the run with its own words
      case UNKNOWN -> "output not proven yet";
    };
  }

  private static String best(HeatSource source, String unit) {
    return String.format(
        Locale.ROOT,
        "best %s at column %.0f row %.0f, p %s",
        FindingsMaker.rise(source.swingKelvin(), unit),
        source.column(),
        source.row(),
        Probability.brief(source.familyWiseP()));
  }

  private static void add(StringBuilder line, String format, Object... values) {
    line.append(String.format(Locale.ROOT, format, values));
  }
}
