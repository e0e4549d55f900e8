package railglow.report;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import railglow.report.draw.Sketch;
import railglow.report.draw.Svg;

/**
 * The figures as a template wants them: title, caption, drawing and size. Pure.
 *
 * @param inline whether the drawing itself goes into the page; else its name, for a PDF
 * @param ownerMillimetres how high the picture on the owner's one page may be
 */
record FigureTexts(
    RunContents run,
    Map<String, Sketch> figures,
    Texts texts,
    boolean inline,
    double ownerMillimetres) {
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
        "overlay",
        figure(
            Figures.OVERLAY,
            texts.get("overlay"),
            texts.get("overlay.caption", run.riseUnit()),
            texts.get("overlay")));
    values.put(
        "trace",
        figure(
            Figures.TRACE, texts.get("trace"), texts.get("trace.caption"), texts.get("trace.alt")));
    values.put("closeViews", closeViews());
    List<Map<String, String>> planes = new ArrayList<>();
    for (String name :
        List.of("source", "quadrature", "delay", "significance", "trust", "background")) {
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

  private List<Map<String, String>> closeViews() {
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
    return close;
  }

  private static void addTo(List<Map<String, String>> list, Map<String, String> figure) {
    if (figure != null) {
      list.add(figure);
    }
  }

  private Map<String, String> figure(String name, String title, String caption, String alt) {
    Sketch sketch = figures.get(name);
    if (sketch == null) {
      return null;
    }
    Map<String, String> figure = new HashMap<>();
    figure.put("name", name);
    figure.put("title", title);
    figure.put("caption", caption);
    figure.put("svg", inline ? Svg.of(sketch, alt) : "");
    figure.put("large", size(sketch, 180, 108));
    figure.put("owner", size(sketch, 165, ownerMillimetres));
    figure.put("middle", size(sketch, 180, 150));
    figure.put("medium", size(sketch, 180, 104));
    figure.put("small", size(sketch, 86, 68));
    return figure;
  }

  /** A CSS size in millimetres that keeps the drawing's shape. */
  static String size(Sketch sketch, double mostWide, double mostHigh) {
    double scale = Math.min(mostWide / sketch.width(), mostHigh / sketch.height());
    return String.format(
        Locale.ROOT, "width:%.1fmm;height:%.1fmm", sketch.width() * scale, sketch.height() * scale);
  }
}
