package railglow.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import railglow.journal.Entry;
import railglow.observed.OutputState;
import railglow.observed.Regulation;
import railglow.observed.SupplyReading;
import railglow.run.logging.LogPlan;
import railglow.run.logging.LogProgress;
import railglow.units.Quantity;
import railglow.units.Unit;

/** A log in words. Pure text, no control codes. */
final class LogText {
  private LogText() {}

  /** One line that says how a log stands. */
  static String line(LogProgress progress) {
    StringBuilder line = new StringBuilder();
    add(line, "%.0f s", Math.max(0, progress.seconds()));
    line.append(progress.recording() ? "" : "  waits for its start condition");
    if (progress.output() != null) {
      line.append("  ").append(output(progress.output()));
    }
    SupplyReading reading = progress.reading();
    if (reading != null) {
      add(line, "  %.3f V %.4f A %.3f W", reading.volts(), reading.amperes(), reading.watts());
      line.append(regulation(reading.regulation()));
      reading.trips().stream().sorted().forEach(trip -> line.append(" TRIP ").append(trip));
    }
    if (!Double.isNaN(progress.hottestCelsius())) {
      add(line, "  hottest %.1f degC", progress.hottestCelsius());
    } else if (!Double.isNaN(progress.hottestRiseKelvin())) {
      add(line, "  largest rise %.2f K", progress.hottestRiseKelvin());
    }
    for (int i = 0; i < progress.means().length; i++) {
      add(line, "  %s %.2f", progress.names().get(i), progress.means()[i]);
      if (!Double.isNaN(progress.rises()[i])) {
        add(line, " (%+.2f K)", progress.rises()[i]);
      }
    }
    if (progress.markers() > 0) {
      add(line, "  %d marked", progress.markers());
    }
    return line.toString();
  }

  /** What is going to be logged. */
  static String plan(LogSetup setup) {
    LogPlan plan = setup.plan();
    StringBuilder text = new StringBuilder();
    if (plan.injects()) {
      text.append("steady ")
          .append(Quantity.format(plan.levelVolts(), Unit.VOLT))
          .append(", at most ")
          .append(Quantity.format(setup.steady().maxAmperes(), Unit.AMPERE))
          .append(", after a lead-in of ");
    } else {
      text.append("nothing is injected; the baseline is the first ");
    }
    text.append(Quantity.format(plan.leadInSeconds(), Unit.SECOND));
    plan.startOn()
        .ifPresent(
            start ->
                text.append("; frames from ").append('\'').append(start.text()).append("' on"));
    text.append("; ")
        .append(
            Double.isInfinite(plan.longestSeconds())
                ? "until it is stopped"
                : "for " + Quantity.format(plan.longestSeconds(), Unit.SECOND));
    plan.stopOn().ifPresent(stop -> text.append(", or until '").append(stop.text()).append('\''));
    return text.toString();
  }

  /** What the frames take on the disk, known beforehand. */
  static String room(LogSetup setup) {
    double minute = setup.bytesPerMinute() / 1e6;
    double most = setup.plannedBytes() / 1e6;
    return Double.isInfinite(setup.plan().longestSeconds())
        ? String.format(
            Locale.ROOT, "at most %.0f MB of frames a minute, stored without loss", minute)
        : String.format(
            Locale.ROOT,
            "at most %.0f MB of frames (%.0f MB a minute), stored without loss",
            most,
            minute);
  }

  /** How readings and frames lie on one time base. */
  static String aligned(Entry.Aligned aligned, double latencySeconds) {
    String frame =
        Double.isNaN(aligned.frameSeconds())
            ? "no frame was kept"
            : String.format(
                Locale.ROOT,
                "frames +-%.1f ms (the camera's latency of %.0f ms taken as given; 'bench"
                    + " --align' measures it)",
                1e3 * aligned.frameSeconds(),
                1e3 * latencySeconds);
    return Double.isNaN(aligned.readingSeconds())
        ? frame
        : String.format(
            Locale.ROOT,
            "readings and frames on one clock: readings +-%.1f ms, %s",
            1e3 * aligned.readingSeconds(),
            frame);
  }

  private static String output(OutputState state) {
    return switch (state) {
      case ON -> "ON";
      case PROVEN_OFF -> "off";
      case UNKNOWN -> "OUTPUT UNKNOWN";
    };
  }

  private static String regulation(Regulation regulation) {
    return switch (regulation) {
      case CONSTANT_VOLTAGE -> " CV";
      case CONSTANT_CURRENT -> " CC";
      case UNREGULATED -> " UNREGULATED";
      case NONE, NOT_REPORTED -> "";
    };
  }

  private static void add(StringBuilder line, String format, Object... values) {
    line.append(String.format(Locale.ROOT, format, values));
  }

  /** Marks as a table; empty without any. */
  static List<String> marks(List<Entry.Marker> markers, long startNanos) {
    List<String> lines = new ArrayList<>();
    for (Entry.Marker marker : markers) {
      lines.add(
          String.format(
              Locale.ROOT, "  %8.2f s  %s", (marker.nanos() - startNanos) / 1e9, marker.text()));
    }
    return lines;
  }
}
