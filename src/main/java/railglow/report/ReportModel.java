package railglow.report;

import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.IntStream;
import railglow.board.Suspect;
import railglow.board.TrueRise;
import railglow.journal.Entry;
import railglow.journal.Findings;
import railglow.journal.Journal;
import railglow.journal.RunHeader;
import railglow.observed.OutputState;
import railglow.report.UsedRows.Row;
import railglow.safety.StopCause;
import railglow.thermal.HeatSource;
import railglow.units.Interval;
import railglow.units.Probability;
import railglow.units.Quantity;
import railglow.units.Unit;

/** A run in the words of its report: what the page's template fills in. Pure. */
final class ReportModel {
  private static final double NEAR_LIMIT = 0.9;

  private final RunContents run;
  private final Journal journal;
  private final Optional<Findings> findings;
  private final Texts texts;
  private final String unit;

  ReportModel(RunContents run, Texts texts) {
    this.run = run;
    this.journal = run.journal();
    this.findings = run.findings();
    this.texts = texts;
    this.unit = run.riseUnit();
  }

  /** Everything but the figures. */
  Map<String, Object> values(List<String> problems) {
    RunHeader header = journal.header();
    Map<String, Object> values = new LinkedHashMap<>();
    values.put("t", texts.all());
    values.put("language", texts.language());
    values.put("subject", subject());
    values.put("run", texts.get("run", header.runId()));
    values.put(
        "started",
        texts.get(
            "started",
            DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm:ss 'UTC'", Locale.ROOT)
                .format(header.started().atOffset(ZoneOffset.UTC))));
    values.put("found", verdictKey().equals(Findings.Verdict.HEAT_FOUND.name()));
    values.put("verdict", texts.get("verdict." + verdictKey()));
    values.put("headline", findings.map(Findings::headline).orElse(texts.get("no.findings")));
    values.put("certainty", findings.map(this::certainty).orElse(""));
    values.put("nextStep", findings.map(Findings::nextStep).orElse(""));
    values.put("ending", ending());
    values.put("alarm", alarm());
    values.put("problems", problems);
    values.put(
        "cautions", IntStream.rangeClosed(1, 5).mapToObj(i -> texts.get("caution." + i)).toList());
    values.put("suspects", suspects());
    values.put("paths", PathRows.of(findings.map(Findings::paths).orElse(List.of())));
    values.put("sources", sources());
    values.put("electrical", electrical());
    values.put("limits", limits());
    values.put("frames", frames());
    values.put("used", UsedRows.of(header, texts));
    values.put("made", texts.get("made", run.folder().name()));
    return values;
  }

  private String verdictKey() {
    return journal.header().isLog() ? "LOG" : findings.map(f -> f.verdict().name()).orElse("NONE");
  }

  String subject() {
    RunHeader header = journal.header();
    return texts.get(
        "title.for",
        header.board().isEmpty() ? texts.get("board.none") : header.board(),
        header.rail().isEmpty() ? texts.get("rail.none") : header.rail());
  }

  /** What the headline does not say; empty where it says all. */
  private String certainty(Findings f) {
    if (f.verdict() == Findings.Verdict.HEAT_FOUND && !f.sources().isEmpty()) {
      HeatSource first = f.sources().get(f.lead().source());
      return texts.get(
          "certainty.found",
          Probability.printed(first.familyWiseP()),
          first.settledRiseIsKnown()
              ? texts.get("certainty.settling", between(first.riseInterval95()))
              : texts.get("certainty.unsettled"));
    }
    return f.verdict() == Findings.Verdict.NOTHING_FOUND && !Double.isNaN(f.upperLimitMilliwatts())
        ? texts.get(
            "certainty.nothing.power", Quantity.format(f.upperLimitMilliwatts() / 1000, Unit.WATT))
        : "";
  }

  private String ending() {
    return journal
        .closed()
        .map(
            closed ->
                texts.get(
                    "end.closed",
                    texts.get("cause." + closed.cause()),
                    droveNothing() ? "" : texts.get("output." + closed.output())))
        .orElse(texts.get("end.open"))
        .strip();
  }

  /** A run that drove no supply has no output to be proven off. */
  private boolean droveNothing() {
    RunHeader header = journal.header();
    return header.supplyIdentity().isEmpty()
        || header.isLog() && header.sequence().levelVolts() == 0;
  }

  private String alarm() {
    Optional<Entry.Closed> closed = journal.closed();
    if (closed.isPresent() && !droveNothing() && closed.get().output() != OutputState.PROVEN_OFF) {
      return texts.get("output." + closed.get().output());
    }
    return journal
        .of(Entry.Stopped.class)
        .filter(stopped -> stopped.cause().kind() == StopCause.Kind.LIMIT)
        .findFirst()
        .map(Entry.Stopped::evidence)
        .orElse("");
  }

  private List<Map<String, String>> suspects() {
    List<Map<String, String>> rows = new ArrayList<>();
    for (Suspect s : findings.map(Findings::suspects).orElse(List.of())) {
      rows.add(
          Map.of(
              "rank", Integer.toString(s.rank()),
              "part", s.part(),
              "source", Integer.toString(s.sourceIndex() + 1),
              "distance",
                  s.distanceMillimetres() == 0
                      ? texts.get("suspects.inside")
                      : String.format(Locale.ROOT, "%.1f mm", s.distanceMillimetres()),
              "rail", texts.get(s.onRail() ? "yes" : "no"),
              "reason", s.reason()));
    }
    return rows;
  }

  private List<Map<String, String>> sources() {
    List<Map<String, String>> rows = new ArrayList<>();
    for (HeatSource s : findings.map(Findings::sources).orElse(List.of())) {
      rows.add(
          Map.of(
              "index", Integer.toString(rows.size() + 1),
              "place",
                  Words.plusMinus(s.column(), s.columnVariance())
                      + ", "
                      + Words.plusMinus(s.row(), s.rowVariance())
                      + " px",
              "swing",
                  Words.rise(s.swingKelvin(), unit) + " (" + between(s.swingInterval95()) + ")",
              "rise",
                  s.settledRiseIsKnown()
                      ? between(s.riseInterval95())
                      : texts.get("sources.unsettled"),
              "trueRise", trueRise(rows.size()),
              "channels",
                  Words.rise(s.inPhaseKelvin(), unit)
                      + ", "
                      + Words.rise(s.quadratureKelvin(), unit),
              "tau", Quantity.format(s.timeConstantSeconds(), Unit.SECOND),
              "width", Quantity.format(s.widthPixels(), Unit.PIXEL),
              "p", Probability.printed(s.familyWiseP()),
              "cycles", Words.percent(s.cycleConsistency())));
    }
    return rows;
  }

  private String between(Interval interval) {
    return Words.rise(interval.low(), unit) + " to " + Words.rise(interval.high(), unit);
  }

  /** With its error, the surface and its emissivity; a dash where none can be given. */
  private String trueRise(int source) {
    return findings.map(Findings::trueRises).orElse(List.of()).stream()
        .filter(rise -> rise.sourceIndex() == source)
        .findFirst()
        .map(
            rise ->
                String.format(
                    Locale.ROOT,
                    "%s +- %s (%s, %.2f +- %.2f; %s)%s",
                    Words.rise(rise.riseKelvin(), unit),
                    Words.rise(rise.sigmaKelvin(), unit),
                    rise.surface(),
                    rise.emissivity(),
                    rise.emissivitySigma(),
                    mirrored(rise),
                    rise.bareMetal() ? "; " + texts.get("sources.true.metal") : ""))
        .orElse("-");
  }

  private String mirrored(TrueRise rise) {
    return String.format(
        texts.get("sources.true.mirrors"),
        Quantity.format(rise.reflectedCelsius(), Unit.CELSIUS),
        Words.rise(rise.reflectedSigmaKelvin(), "K"),
        rise.reflectedFrom());
  }

  private List<Row> electrical() {
    List<Row> rows = new ArrayList<>();
    findings.ifPresent(
        f -> {
          add(rows, "electrical.volts", f.onVolts(), Unit.VOLT);
          add(rows, "electrical.amperes", f.onAmperes(), Unit.AMPERE);
          add(rows, "electrical.watts", f.onWatts(), Unit.WATT);
          add(rows, "electrical.ohms", f.railOhms(), Unit.OHM);
          if (!f.sources().isEmpty() && f.onWatts() > 0 && unit.equals("K")) {
            double perWatt = f.sources().get(f.lead().source()).swingKelvin() / f.onWatts();
            add(rows, "electrical.kw", perWatt, Unit.KELVIN_PER_WATT);
          }
        });
    return rows;
  }

  private void add(List<Row> rows, String key, double value, Unit quantity) {
    if (Double.isFinite(value)) {
      rows.add(new Row(texts.get(key), Quantity.format(value, quantity)));
    }
  }

  private List<Map<String, Object>> limits() {
    List<Map<String, Object>> rows = new ArrayList<>();
    for (LimitUse use : LimitUse.of(journal)) {
      double share = use.share();
      boolean known = Double.isFinite(share);
      boolean set = use.bound().isSet();
      rows.add(
          Map.of(
              "what", texts.get(use.textKey()),
              "value",
                  set
                      ? Quantity.format(use.bound().value(), use.unit())
                      : texts.get("limits.unlimited"),
              "highest",
                  Double.isNaN(use.highest())
                      ? texts.get("unknown")
                      : Quantity.format(use.highest(), use.unit()),
              "share", known ? Words.percent(share) : "",
              "near", known && share >= NEAR_LIMIT,
              "width", known ? (int) Math.max(0, Math.min(100, Math.round(100 * share))) : 0,
              "origin", set ? use.bound().origin() : ""));
    }
    return rows;
  }

  private List<Row> frames() {
    List<Row> rows = new ArrayList<>();
    findings.ifPresent(
        f -> {
          rows.add(new Row(texts.get("frames.cycles"), Integer.toString(f.cyclesUsed())));
          rows.add(new Row(texts.get("frames.rejected"), Integer.toString(f.cyclesRejected())));
        });
    journal
        .closed()
        .ifPresent(
            closed -> {
              rows.add(new Row(texts.get("frames.arrived"), Long.toString(closed.framesArrived())));
              rows.add(new Row(texts.get("frames.dropped"), Long.toString(closed.framesDropped())));
              rows.add(new Row(texts.get("frames.missing"), Long.toString(closed.framesMissing())));
            });
    findings.ifPresent(
        f -> rows.add(new Row(texts.get("frames.leftout"), leftOut(f.framesByMark()))));
    for (Entry entry : journal.entries()) {
      if (entry instanceof Entry.Note note) {
        rows.add(new Row(texts.get("frames.noted"), note.text()));
      }
    }
    return rows;
  }

  private String leftOut(Map<String, Integer> byMark) {
    List<String> parts = new ArrayList<>();
    new TreeMap<>(byMark)
        .forEach(
            (mark, count) -> {
              if (count > 0) {
                parts.add(count + " " + texts.getOr("mark." + mark.toUpperCase(Locale.ROOT), mark));
              }
            });
    return parts.isEmpty() ? texts.get("frames.leftout.none") : String.join(", ", parts);
  }
}
