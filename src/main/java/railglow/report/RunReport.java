package railglow.report;

import io.pebbletemplates.pebble.PebbleEngine;
import io.pebbletemplates.pebble.loader.ClasspathLoader;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import javax.imageio.ImageIO;
import railglow.journal.RunFolder;
import railglow.journal.WholeFile;
import railglow.report.draw.Paint;
import railglow.report.draw.Sketch;
import railglow.report.draw.Svg;
import railglow.thermal.Plane;

/**
 * Makes everything a person reads from what a run folder holds: {@code report.html}, pictures,
 * {@code trace.csv}, planes as TIFF. Shows what there is and says what is missing. Stateless.
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
    RunContents run = RunContents.read(folder);
    Texts texts = new Texts(Locale.ENGLISH);
    Trace trace = Trace.of(run.journal());
    Map<String, Sketch> figures = Figures.of(run, trace, placement, texts);
    List<String> problems = new ArrayList<>(run.problems());
    WholeFile.write(folder.trace(), trace.csv().getBytes(StandardCharsets.UTF_8));
    for (Map.Entry<String, Plane> plane : run.planes().entrySet()) {
      TiffFile.write(
          folder.planes().resolve(plane.getKey() + ".tif"),
          plane.getValue(),
          description(run, plane.getKey()),
          placement.millimetresPerPixel());
    }
    for (Map.Entry<String, Sketch> figure : figures.entrySet()) {
      WholeFile.write(
          folder.picture(figure.getKey()), png(Paint.picture(figure.getValue(), PNG_SCALE)));
    }
    WholeFile.write(
        folder.report(), page(run, figures, texts, problems).getBytes(StandardCharsets.UTF_8));
    return List.copyOf(problems);
  }

  private static String description(RunContents run, String plane) {
    String unit =
        switch (plane) {
          case "significance" -> "standard normal score";
          case "background" -> Figures.backgroundUnit(run).replace("\u00b0C", "degC");
          default -> run.riseUnit();
        };
    return plane + " [" + unit + "] of run " + run.journal().header().runId();
  }

  private static byte[] png(BufferedImage image) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    ImageIO.setUseCache(false);
    ImageIO.write(image, "png", bytes);
    return bytes.toByteArray();
  }

  private static String page(
      RunContents run, Map<String, Sketch> figures, Texts texts, List<String> problems)
      throws IOException {
    Map<String, Object> values = new ReportModel(run, texts).values(problems);
    values.putAll(new FigureTexts(run, figures, texts).values());
    ClasspathLoader loader = new ClasspathLoader(RunReport.class.getClassLoader());
    loader.setPrefix("railglow/report");
    loader.setSuffix(".html");
    PebbleEngine pages =
        new PebbleEngine.Builder()
            .loader(loader)
            .autoEscaping(true)
            .strictVariables(true)
            .defaultLocale(Locale.ROOT)
            .build();
    StringWriter out = new StringWriter();
    pages.getTemplate("report").evaluate(out, new HashMap<>(values));
    return out.toString();
  }

  /** The figures as the template wants them: drawing, title and caption. */
  private record FigureTexts(RunContents run, Map<String, Sketch> figures, Texts texts) {
    Map<String, Object> values() {
      boolean found = run.findings().map(f -> !f.sources().isEmpty()).orElse(false);
      Map<String, Object> values = new HashMap<>();
      values.put(
          "difference",
          figure(
              Figures.DIFFERENCE,
              texts.get("difference"),
              texts.get(found ? "difference.caption" : "difference.caption.null", run.riseUnit()),
              texts.get("difference.alt")));
      values.put(
          "trace",
          figure(
              Figures.TRACE,
              texts.get("trace"),
              texts.get("trace.caption"),
              texts.get("trace.alt")));
      List<Map<String, String>> close = new ArrayList<>();
      run.findings()
          .ifPresent(
              findings -> {
                for (int i = 0; i < findings.sources().size(); i++) {
                  var source = findings.sources().get(i);
                  addTo(
                      close,
                      figure(
                          Figures.close(i),
                          texts.get("close", Integer.toString(i + 1)),
                          texts.get(
                              "close.caption",
                              Integer.toString(i + 1),
                              Words.plusMinus(source.column(), source.columnVariance()),
                              Words.plusMinus(source.row(), source.rowVariance())),
                          texts.get("close.alt")));
                }
              });
      values.put("closeViews", close);
      List<Map<String, String>> planes = new ArrayList<>();
      for (String name : List.of("quadrature", "significance", "background")) {
        String unit = name.equals("background") ? Figures.backgroundUnit(run) : run.riseUnit();
        addTo(
            planes,
            figure(
                name,
                texts.get("plane." + name),
                texts.get("plane." + name + ".caption", unit),
                texts.get("plane." + name)));
      }
      values.put("planes", planes);
      return values;
    }

    private static void addTo(List<Map<String, String>> list, Map<String, String> figure) {
      if (figure != null) {
        list.add(figure);
      }
    }

    private Map<String, String> figure(String name, String title, String caption, String alt) {
      Sketch sketch = figures.get(name);
      return sketch == null
          ? null
          : Map.of("svg", Svg.of(sketch, alt), "title", title, "caption", caption);
    }
  }
}
