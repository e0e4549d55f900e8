package railglow.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import railglow.journal.Findings;
import railglow.journal.RunHeader;
import railglow.thermal.HeatSource;
import railglow.units.Probability;
import railglow.units.Quantity;
import railglow.units.Unit;

/** The one page for the board's owner, in words without the trade's terms. Pure. */
final class OwnerWords {
  private static final double LETTERS_A_LINE = 85;
  private static final double LINE_MILLIMETRES = 10;

  private OwnerWords() {}

  static Map<String, Object> values(
      RunContents run, List<OhmReading> readings, String verdict, Texts texts) {

    RunHeader header = run.journal().header();
    Map<String, Object> values = new LinkedHashMap<>();
    values.put("ownerWrong", wrong(run, texts));
    values.put("ownerVerdict", verdict);
    values.put("ownerDone", done(run, texts));
    values.put("ownerWarm", run.findings().map(f -> warm(f, run.riseUnit(), texts)).orElse(""));
    values.put("ownerRecord", texts.get("owner.record", header.runId()));
    List<Map<String, String>> rows = new ArrayList<>();
    for (OhmReading reading : readings) {
      rows.add(
          Map.of(
              "rail", reading.rail(),
              "before", ohms(reading.beforeOhms(), texts.get("unknown")),
              "normal", reading.normal().isEmpty() ? texts.get("unknown") : reading.normal(),
              "after", ohms(reading.afterOhms(), "")));
    }
    values.put("readings", rows);
    return values;
  }

  /** What the picture must give way to, so that a next step of more than a line leaves one page. */
  static double longNextStepMillimetres(RunContents run) {
    int letters = run.findings().map(Findings::nextStep).orElse("").length();
    return Math.max(0, Math.ceil(letters / LETTERS_A_LINE) - 1) * LINE_MILLIMETRES;
  }

  private static String ohms(double value, String whenUnknown) {
    return Double.isFinite(value) ? Quantity.format(value, Unit.OHM) : whenUnknown;
  }

  private static String wrong(RunContents run, Texts texts) {
    if (run.findings().isEmpty()) {
      return texts.get("owner.NONE");
    }
    Findings findings = run.findings().get();
    return switch (findings.verdict()) {
      case HEAT_FOUND ->
          findings
              .lead()
              .suspect()
              .map(
                  suspect ->
                      texts.get("owner.HEAT_FOUND", suspect.part(), run.journal().header().rail()))
              .or(
                  () ->
                      findings
                          .lead()
                          .path()
                          .map(path -> texts.get("owner.PATH", run.journal().header().rail())))
              .orElse(findings.headline());
      case NOTHING_FOUND ->
          texts.get("owner.NOTHING_FOUND", Words.rise(findings.upperLimit(), run.riseUnit()));
      case NOT_ENOUGH_DATA -> texts.get("owner.NOT_ENOUGH_DATA");
    };
  }

  private static String done(RunContents run, Texts texts) {
    RunHeader header = run.journal().header();
    String rail = header.rail().isEmpty() ? texts.get("rail.none") : header.rail();
    int cycles = run.findings().map(Findings::cyclesUsed).orElse(0);
    String text =
        texts.get(
            "owner.done.text",
            rail,
            Quantity.format(header.sequence().levelVolts(), Unit.VOLT),
            Integer.toString(cycles));
    return run.findings()
        .filter(f -> Double.isFinite(f.onWatts()))
        .map(
            f ->
                text
                    + " "
                    + texts.get(
                        "owner.done.measured",
                        Quantity.format(f.onAmperes(), Unit.AMPERE),
                        Quantity.format(f.onVolts(), Unit.VOLT),
                        Quantity.format(f.onWatts(), Unit.WATT)))
        .orElse(text);
  }

  private static String warm(Findings findings, String unit, Texts texts) {
    if (findings.sources().isEmpty()) {
      return "";
    }
    HeatSource source = findings.sources().get(findings.lead().source());
    return texts.get(
        "owner.warm.text",
        Words.rise(source.swingKelvin(), unit),
        Words.rise(source.swingInterval95().low(), unit),
        Words.rise(source.swingInterval95().high(), unit),
        Probability.printed(source.familyWiseP()));
  }
}
