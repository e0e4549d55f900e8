package railglow.report;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import railglow.journal.Checksums;
import railglow.journal.RunFolder;
import railglow.journal.WholeFile;
import railglow.report.draw.Paint;
import railglow.report.draw.Png;
import railglow.report.draw.Sketch;
import railglow.thermal.Plane;

/**
 * Makes everything a person reads from what a run folder holds: {@code report.html}, pictures,
 * {@code trace.csv}, planes as TIFF, and PDFs. Shows what there is and says what is missing.
 * Stateless.
 */
public final class RunReport {
  private static final double PNG_SCALE = 1.5;

  private RunReport() {}

  /**
   * Writes the report into the run folder, replacing an older one.
   *
   * @param placement where parts are in the picture; {@link Placement#NONE} when not known
   * @return the problems that the report names, one sentence each; empty for a sound run
   * @throws railglow.journal.JournalException when the folder has no readable journal
   */
  public static List<String> write(RunFolder folder, Placement placement) throws IOException {
    return write(folder, placement, Locale.ENGLISH);
  }

  /**
   * As {@link #write(RunFolder, Placement)}; a log also shows its frames at further times.
   *
   * @param language of the sentences; see {@link #language}
   * @param at seconds after the start
   */
  public static List<String> write(
      RunFolder folder, Placement placement, Locale language, double... at) throws IOException {
    RunContents run = RunContents.read(folder);
    Texts texts = new Texts(language);
    if (run.journal().header().isLog()) {
      tiffs(run, placement);
      LogReport report = new LogReport(run, placement, texts, at);
      report.write();
      return report.problems();
    }
    Trace trace = Trace.of(run.journal());
    Map<String, Sketch> figures = Figures.of(run, trace, placement, texts);
    List<Abreast.Job> jobs = new ArrayList<>();
    jobs.add(() -> page(run, figures, texts));
    jobs.add(() -> tiffs(run, placement));
    jobs.add(() -> WholeFile.write(folder.trace(), trace.csv().getBytes(StandardCharsets.UTF_8)));
    figures.forEach(
        (name, figure) ->
            jobs.add(
                () ->
                    WholeFile.write(
                        folder.picture(name), Png.of(Paint.picture(figure, PNG_SCALE)))));
    Abreast.run(jobs);
    return run.problems();
  }

  private static void page(RunContents run, Map<String, Sketch> figures, Texts texts)
      throws IOException {
    Map<String, Object> values = new ReportModel(run, texts).values(run.problems());
    values.putAll(new FigureTexts(run, figures, texts, true, 0).values());
    String page = new Templates().fill("report", values);
    WholeFile.write(run.folder().report(), page.getBytes(StandardCharsets.UTF_8));
  }

  /**
   * How a run is printed.
   *
   * @param language of the sentences; see {@link #language}
   * @param readings of rails before and after the repair; may be empty
   * @param verdict how the case ended, in words for the owner; empty while it is open
   */
  public record Print(Paper paper, Locale language, List<OhmReading> readings, String verdict) {
    private static final double VERDICT_MILLIMETRES = 20;
    private static final double ROW_MILLIMETRES = 6;

    public Print {
      readings = List.copyOf(readings);
    }

    /** How high the owner's picture may be, so that everything stays on one page. */
    double pictureMillimetres() {
      return paper.pictureMillimetres()
          - (verdict.isEmpty() ? 0 : VERDICT_MILLIMETRES)
          - ROW_MILLIMETRES * Math.max(0, readings.size() - 1);
    }
  }

  /**
   * A language by its tag.
   *
   * @throws IllegalArgumentException naming what can be done when its texts are not there
   */
  public static Locale language(String tag) {
    Locale locale = Locale.forLanguageTag(tag);
    if (!Texts.has(locale)) {
      throw new IllegalArgumentException(
          "there are no texts for '"
              + tag
              + "'; English ('en') is shipped, another language is a file texts_"
              + tag
              + ".properties beside texts.properties");
    }
    return locale;
  }

  /**
   * Writes {@code owner.pdf}, one page for the board's owner, and {@code report.pdf}, everything.
   *
   * @throws railglow.journal.JournalException when the folder has no readable journal
   */
  public static void writePdf(RunFolder folder, Placement placement, Print print)
      throws IOException {
    Paper paper = print.paper();
    RunContents run = RunContents.read(folder);
    Texts texts = new Texts(print.language());
    if (run.journal().header().isLog()) {
      logPdf(run, placement, paper, texts);
      return;
    }
    Map<String, Sketch> figures = Figures.of(run, Trace.of(run.journal()), placement, texts);
    Map<String, Object> values = new HashMap<>(new ReportModel(run, texts).values(run.problems()));
    values.putAll(
        new FigureTexts(
                run,
                figures,
                texts,
                false,
                print.pictureMillimetres() - OwnerWords.longNextStepMillimetres(run))
            .values());
    values.putAll(OwnerWords.values(run, print.readings(), print.verdict(), texts));
    values.put("paper", paper.cssSize());
    values.put("checksums", checksums(folder));
    Templates templates = new Templates();
    WholeFile.write(
        folder.root().resolve("owner.pdf"),
        PdfPages.of(templates.fill("owner-print", values), figures));
    WholeFile.write(
        folder.root().resolve("report.pdf"),
        PdfPages.of(templates.fill("report-print", values), figures));
  }

  /** A log has a technical report alone. */
  private static void logPdf(RunContents run, Placement placement, Paper paper, Texts texts)
      throws IOException {
    LogReport report = new LogReport(run, placement, texts);
    Map<String, Object> values = report.values();
    values.put("paper", paper.cssSize());
    values.put("checksums", checksums(run.folder()));
    values.put("traceSize", report.traceSize());
    WholeFile.write(
        run.folder().root().resolve("report.pdf"),
        PdfPages.of(new Templates().fill("log-print", values), report.figures()));
  }

  private static void tiffs(RunContents run, Placement placement) throws IOException {
    for (Map.Entry<String, Plane> plane : run.planes().entrySet()) {
      TiffFile.write(
          run.folder().planes().resolve(plane.getKey() + ".tif"),
          plane.getValue(),
          description(run, plane.getKey()),
          placement.millimetresPerPixel());
    }
  }

  /** Of the files that the run itself wrote; those made from them can be made again. */
  private static List<UsedRows.Row> checksums(RunFolder folder) throws IOException {
    List<UsedRows.Row> rows = new ArrayList<>();
    for (Map.Entry<String, String> sum :
        Checksums.of(folder, Checksums.Scope.MEASURED).entrySet()) {
      rows.add(new UsedRows.Row(sum.getKey(), sum.getValue()));
    }
    return rows;
  }

  private static String description(RunContents run, String plane) {
    String unit =
        switch (plane) {
          case "significance" -> "standard normal score";
          case "source" -> Figures.POWER_UNIT;
          case "trust" -> "share, 0 to 1";
          case "background" -> Figures.backgroundUnit(run).replace("\u00b0C", "degC");
          default -> run.riseUnit();
        };
    return plane + " [" + unit + "] of run " + run.journal().header().runId();
  }
}
