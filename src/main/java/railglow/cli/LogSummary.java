package railglow.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import railglow.journal.Entry;
import railglow.journal.Journal;
import railglow.journal.RunFolder;
import railglow.report.PlaceSummary;
import railglow.run.logging.LoggingRun;

/** What was logged, on one screen. */
final class LogSummary {
  private LogSummary() {}

  static List<String> of(RunFolder folder, Journal journal, LoggingRun.Outcome outcome) {
    List<String> lines = new ArrayList<>();
    lines.add("");
    lines.add(
        String.format(
            Locale.ROOT,
            "Logged     %d frames, %d readings",
            outcome.frames(),
            journal.of(Entry.Reading.class).count()));
    if (!Double.isNaN(outcome.aligned().frameSeconds())) {
      Summary.wrap(
          lines,
          "Alignment  ",
          LogText.aligned(outcome.aligned(), outcome.header().camera().latencySeconds()));
    }
    List<PlaceSummary> places = PlaceSummary.of(journal);
    if (!places.isEmpty()) {
      lines.add("");
      lines.add("Places     mean        lowest      highest     largest rise");
    }
    for (PlaceSummary place : places) {
      lines.add(
          String.format(
              Locale.ROOT,
              "  %-8s %-11s %-11s %-11s %s",
              place.name(),
              place.format(place.mean()),
              place.format(place.low()),
              place.format(place.high()),
              place.formatRise(place.riseHigh())));
    }
    List<Entry.Marker> markers = journal.of(Entry.Marker.class).toList();
    if (!markers.isEmpty()) {
      lines.add("");
      lines.add("Marks");
      lines.addAll(LogText.marks(markers, journal.header().startNanos()));
    }
    lines.add("");
    lines.add("Report     " + folder.report());
    lines.add("Table      " + folder.root().resolve("places.csv"));
    lines.add("Run        " + folder.root());
    return lines;
  }
}
