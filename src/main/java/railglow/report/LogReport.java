package railglow.report;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import railglow.board.places.PlacePixels;
import railglow.journal.Entry;
import railglow.journal.Journal;
import railglow.journal.JournalException;
import railglow.journal.RunHeader;
import railglow.journal.WholeFile;
import railglow.observed.SupplyReading;
import railglow.report.draw.Paint;
import railglow.report.draw.Png;
import railglow.report.draw.Sketch;
import railglow.report.draw.Svg;
import railglow.units.Quantity;
import railglow.units.Unit;

/** A log's report: its trace and any of its frames side by side. Not thread-safe. */
final class LogReport {
  private static final int MOST_PANELS = 8;
  private static final double PNG_SCALE = 1.5;
  private final RunContents run;
  private final Journal journal;
  private final Texts texts;
  private final Trace trace;
  private final List<String> problems;
  private final List<PlacePixels> places = new ArrayList<>();
  private final Map<String, Sketch> figures = new LinkedHashMap<>();
  private LogGallery gallery;

  LogReport(RunContents run, Placement placement, Texts texts, double... at) throws IOException {
    this.run = run;
    this.journal = run.journal();
    this.texts = texts;
    this.trace = Trace.of(journal);
    this.problems = new ArrayList<>(run.problems());
    RunHeader header = journal.header();
    for (Entry.PlaceNamed named : journal.of(Entry.PlaceNamed.class).toList()) {
      places.add(
          PlacePixels.ofRuns(
              named.name(), named.runs(), header.camera().width(), header.camera().height()));
    }
    try {
      gallery = LogGallery.of(run, placement.millimetresPerPixel(), texts, at);
      figures.put("frame", gallery.first(places));
      for (int i = 0; i < gallery.stills().size(); i++) {
        figures.put("still-" + (i + 1), gallery.sketch(gallery.stills().get(i).shot(), places));
      }
    } catch (JournalException e) {
      problems.add(RunContents.sentence(run.folder(), e));
    }
    if (!trace.rows().isEmpty() || !places.isEmpty()) {
      figures.put(Figures.TRACE, TracePicture.of(trace, panels(), marks(), texts));
    }
  }

  List<String> problems() {
    return List.copyOf(problems);
  }

  Map<String, Sketch> figures() {
    return figures;
  }

  /** Writes page, pictures and tables into the run folder. */
  void write() throws IOException {
    WholeFile.write(run.folder().trace(), trace.csv().getBytes(StandardCharsets.UTF_8));
    if (journal.of(Entry.Followed.class).findAny().isPresent()) {
      WholeFile.write(
          run.folder().root().resolve("places.csv"),
          PlaceTable.csv(journal).getBytes(StandardCharsets.UTF_8));
    }
    for (Map.Entry<String, Sketch> figure : figures.entrySet()) {
      if (!figure.getKey().equals("frame")) {
        WholeFile.write(
            run.folder().picture(figure.getKey()),
            Png.of(Paint.picture(figure.getValue(), PNG_SCALE)));
      }
    }
    Map<String, Object> values = values();
    Sketch traceSketch = figures.get(Figures.TRACE);
    values.put("traceSvg", traceSketch == null ? "" : Svg.of(traceSketch, texts.get("trace.alt")));
    values.put(
        "frameSvg",
        gallery == null ? "" : Svg.of(figures.get("frame"), texts.get("log.frame.alt")));
    values.put("framesJson", gallery == null ? "[]" : gallery.json());
    values.put("axis", axis());
    WholeFile.write(
        run.folder().report(),
        new Templates().fill("log", values).getBytes(StandardCharsets.UTF_8));
  }

  /** Everything but the drawings. */
  Map<String, Object> values() {
    Map<String, Object> values = new HashMap<>(new ReportModel(run, texts).values(problems));
    values.put("headline", headline());
    values.put("log", LogWords.what(journal, texts));
    values.put("aligned", LogWords.aligned(journal, texts));
    values.put("marks", markRows());
    values.put("places", placeRows());
    values.put("stills", stills());
    values.put("hasTrace", figures.containsKey(Figures.TRACE));
    return values;
  }

  /** How large the trace is drawn on paper. */
  String traceSize() {
    Sketch sketch = figures.get(Figures.TRACE);
    return sketch == null ? "" : FigureTexts.size(sketch, 180, 225);
  }

  private String headline() {
    return texts.get(
        "log.headline",
        String.format(Locale.ROOT, "%.1f s", trace.endSeconds()),
        Long.toString(journal.of(Entry.Followed.class).count()),
        Long.toString(journal.of(Entry.Reading.class).count()),
        Long.toString(journal.of(Entry.Marker.class).count()));
  }

  private String axis() {
    double end = trace.endSeconds() > 0 ? trace.endSeconds() : 1;
    return String.format(
        Locale.ROOT,
        "{\"left\":%.1f,\"right\":%.1f,\"end\":%.6f}",
        TracePicture.LEFT,
        TracePicture.WIDTH - TracePicture.RIGHT,
        end);
  }

  private List<TracePicture.Panel> panels() {
    List<Entry.Followed> followed = journal.of(Entry.Followed.class).toList();
    double[] seconds = followed.stream().mapToDouble(f -> journal.seconds(f.nanos())).toArray();
    String unit = Figures.backgroundUnit(run);
    List<TracePicture.Panel> panels = new ArrayList<>();
    for (int i = 0; i < Math.min(MOST_PANELS, places.size()); i++) {
      int place = i;
      panels.add(
          TracePicture.ofPlace(
              texts.get("log.panel", places.get(i).name(), unit),
              seconds,
              followed.stream().mapToDouble(f -> f.mean()[place]).toArray(),
              followed.stream().mapToDouble(f -> f.low()[place]).toArray(),
              followed.stream().mapToDouble(f -> f.high()[place]).toArray()));
    }
    return panels;
  }

  private List<TracePicture.Mark> marks() {
    List<TracePicture.Mark> marks = new ArrayList<>();
    for (Entry.Marker marker : journal.of(Entry.Marker.class).toList()) {
      marks.add(
          new TracePicture.Mark(
              journal.seconds(marker.nanos()), Integer.toString(marks.size() + 1)));
    }
    return marks;
  }

  private List<Map<String, String>> markRows() {
    List<Map<String, String>> rows = new ArrayList<>();
    for (Entry.Marker marker : journal.of(Entry.Marker.class).toList()) {
      double seconds = journal.seconds(marker.nanos());
      SupplyReading near = LogWords.reading(journal, marker.nanos());
      rows.add(
          Map.of(
              "index", Integer.toString(rows.size() + 1),
              "seconds", String.format(Locale.ROOT, "%.3f", seconds),
              "time", String.format(Locale.ROOT, "%.2f s", seconds),
              "text", marker.text(),
              "volts", near == null ? "" : Quantity.format(near.volts(), Unit.VOLT),
              "amperes", near == null ? "" : Quantity.format(near.amperes(), Unit.AMPERE),
              "watts", near == null ? "" : Quantity.format(near.watts(), Unit.WATT)));
    }
    return rows;
  }

  private List<Map<String, String>> placeRows() {
    List<Map<String, String>> rows = new ArrayList<>();
    for (PlaceSummary place : PlaceSummary.of(journal)) {
      rows.add(
          Map.of(
              "name", place.name(),
              "mean", degrees(place.format(place.mean())),
              "low", degrees(place.format(place.low())),
              "high", degrees(place.format(place.high())),
              "riseMean", place.formatRise(place.riseMean()),
              "riseLow", place.formatRise(place.riseLow()),
              "riseHigh", place.formatRise(place.riseHigh())));
    }
    return rows;
  }

  private static String degrees(String text) {
    return text.replace("degC", "\u00b0C");
  }

  private List<Map<String, String>> stills() {
    List<Map<String, String>> rows = new ArrayList<>();
    for (int i = 0; gallery != null && i < gallery.stills().size(); i++) {
      LogGallery.Still still = gallery.stills().get(i);
      FrameShots.Shot shot = still.shot();
      String caption =
          texts.get(
              "log.still.caption",
              String.format(Locale.ROOT, "%.2f s", shot.seconds()),
              Long.toString(shot.number()),
              Figures.backgroundUnit(run));
      rows.add(
          Map.of(
              "name", "still-" + (i + 1),
              "title", still.title(),
              "caption", caption,
              "small", FigureTexts.size(figures.get("still-" + (i + 1)), 86, 68),
              "svg", Svg.of(figures.get("still-" + (i + 1)), still.title())));
    }
    return rows;
  }
}
