package railglow.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.StringJoiner;
import java.util.TreeMap;
import railglow.journal.Entry;
import railglow.journal.Journal;
import railglow.observed.Edge;
import railglow.observed.OutputState;
import railglow.observed.SupplyReading;

/**
 * What was measured against time, in the journal's order.
 *
 * @param onSpans times at which the output was on or may have been
 * @param endSeconds time of the last entry
 */
record Trace(List<Row> rows, List<Span> onSpans, double endSeconds) {
  static final String HEADER =
      "time_s,voltage_V,current_A,power_W,output,regulation,hottest_degC,hottest_rise_K,"
          + "hottest_column_px,hottest_row_px,noted";

  /**
   * One moment; what was not measured at it is NaN, empty or -1.
   *
   * @param seconds after the start of the run
   * @param noted what the record says of frames or camera at this moment
   */
  record Row(
      double seconds,
      double volts,
      double amperes,
      String output,
      String regulation,
      double celsius,
      double riseKelvin,
      int column,
      int row,
      String noted) {
    double watts() {
      return volts * amperes;
    }

    String csv() {
      return String.join(
          ",",
          number(seconds, 6),
          number(volts, 6),
          number(amperes, 6),
          number(watts(), 6),
          output,
          regulation,
          number(celsius, 3),
          number(riseKelvin, 4),
          column < 0 ? "" : Integer.toString(column),
          row < 0 ? "" : Integer.toString(row),
          noted.isEmpty() ? "" : '"' + noted.replace("\"", "\"\"") + '"');
    }

    private static String number(double value, int decimals) {
      return Double.isFinite(value) ? String.format(Locale.ROOT, "%." + decimals + "f", value) : "";
    }
  }

  /** A stretch of time in seconds after the start. */
  record Span(double from, double to) {}

  static Trace of(Journal journal) {
    List<Row> rows = new ArrayList<>();
    List<Span> spans = new ArrayList<>();
    OutputState state = OutputState.UNKNOWN;
    double onSince = Double.NaN;
    double end = 0;
    for (Entry entry : journal.entries()) {
      end = Math.max(end, journal.seconds(entry.nanos()));
      if (entry instanceof Entry.Output output) {
        state = output.state();
        if (state == OutputState.PROVEN_OFF && !Double.isNaN(onSince)) {
          spans.add(new Span(onSince, journal.seconds(output.nanos())));
          onSince = Double.NaN;
        }
      } else if (entry instanceof Entry.Reading reading) {
        rows.add(row(journal, reading.reading(), state));
      } else if (entry instanceof Entry.Hottest hottest) {
        rows.add(
            new Row(
                journal.seconds(hottest.nanos()),
                Double.NaN,
                Double.NaN,
                state.name(),
                "",
                hottest.celsius(),
                hottest.riseKelvin(),
                hottest.column(),
                hottest.row(),
                ""));
      } else if (entry instanceof Entry.Note note) {
        rows.add(noted(journal, note.nanos(), state, note.text()));
      } else if (entry instanceof Entry.Cycle cycle && !words(cycle).isEmpty()) {
        rows.add(noted(journal, cycle.nanos(), state, words(cycle)));
      } else if (entry instanceof Entry.EdgeMade made) {
        Edge edge = made.edge();
        if (edge.on() && Double.isNaN(onSince)) {
          onSince = journal.seconds(edge.commandedNanos());
        } else if (!edge.on() && !Double.isNaN(onSince)) {
          spans.add(new Span(onSince, journal.seconds(edge.confirmedNanos())));
          onSince = Double.NaN;
        }
      }
    }
    if (!Double.isNaN(onSince)) {
      spans.add(new Span(onSince, end));
    }
    return new Trace(List.copyOf(rows), List.copyOf(spans), end);
  }

  private static Row noted(Journal journal, long nanos, OutputState state, String text) {
    return new Row(
        journal.seconds(nanos),
        Double.NaN,
        Double.NaN,
        state.name(),
        "",
        Double.NaN,
        Double.NaN,
        -1,
        -1,
        text);
  }

  /** Why a cycle or some of its frames do not count; transitions are in every cycle. */
  private static String words(Entry.Cycle cycle) {
    StringJoiner words = new StringJoiner(", ");
    new TreeMap<>(cycle.framesLeftOut())
        .forEach(
            (reason, count) -> {
              if (!reason.equals("transition")) {
                words.add(count + " " + reason);
              }
            });
    String frames = words.length() == 0 ? "" : "frames left out: " + words;
    if (cycle.accepted()) {
      return frames.isEmpty() ? "" : "cycle " + cycle.cycle() + ", " + frames;
    }
    return "cycle "
        + cycle.cycle()
        + " left out: "
        + cycle.reason()
        + (frames.isEmpty() ? "" : "; " + frames);
  }

  private static Row row(Journal journal, SupplyReading r, OutputState state) {
    double middle = (journal.seconds(r.startNanos()) + journal.seconds(r.endNanos())) / 2;
    return new Row(
        middle,
        r.volts(),
        r.amperes(),
        state.name(),
        r.regulation().name(),
        Double.NaN,
        Double.NaN,
        -1,
        -1,
        "");
  }

  /** RFC 4180: CRLF line ends, units in the header, empty where nothing was measured. */
  String csv() {
    StringBuilder out = new StringBuilder(HEADER).append("\r\n");
    for (Row row : rows) {
      out.append(row.csv()).append("\r\n");
    }
    return out.toString();
  }
}
