package railglow.report;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import railglow.journal.Findings;
import railglow.report.draw.ColourScale;
import railglow.report.draw.PlaneView;
import railglow.report.draw.Sketch;
import railglow.thermal.HeatSource;
import railglow.thermal.Plane;

/**
 * Every drawing of a report, by name: {@code difference}, {@code source-1} …, {@code trace} and the
 * other planes, as far as the run has what they need. Pure.
 */
final class Figures {
  static final String DIFFERENCE = "difference";
  static final String TRACE = "trace";
  private static final int MOST_CLOSE_VIEWS = 4;

  private Figures() {}

  static String close(int sourceIndex) {
    return "source-" + (sourceIndex + 1);
  }

  static Map<String, Sketch> of(RunContents run, Trace trace, Placement placement, Texts texts) {
    Map<String, Sketch> figures = new LinkedHashMap<>();
    List<HeatSource> sources = run.findings().map(Findings::sources).orElse(List.of());
    run.plane("in-phase")
        .ifPresent(
            plane -> {
              DifferencePicture picture =
                  new DifferencePicture(
                      plane,
                      run.riseUnit(),
                      sources,
                      run.findings().map(Findings::suspects).orElse(List.of()),
                      placement.parts(),
                      placement.millimetresPerPixel(),
                      texts);
              figures.put(DIFFERENCE, picture.whole());
              for (int i = 0; i < Math.min(MOST_CLOSE_VIEWS, sources.size()); i++) {
                figures.put(close(i), picture.close(i));
              }
            });
    run.plane("quadrature")
        .ifPresent(p -> figures.put("quadrature", aroundZero(p, run.riseUnit(), 5)));
    run.plane("significance").ifPresent(p -> figures.put("significance", aroundZero(p, "z", 5)));
    run.plane("background")
        .ifPresent(
            p ->
                figures.put(
                    "background",
                    PlaneView.whole(p, ColourScale.ofRange(p, backgroundUnit(run)), 1024, 900)
                        .sketch()));
    if (!trace.rows().isEmpty()) {
      figures.put(TRACE, TracePicture.of(trace, texts));
    }
    return figures;
  }

  /** The plain thermal mean is in degrees where the camera has an absolute scale. */
  static String backgroundUnit(RunContents run) {
    var camera = run.journal().header().camera();
    if (Double.isNaN(camera.kelvinPerCount())) {
      return "counts";
    }
    return Double.isNaN(camera.celsiusAtZero()) ? "K" : "\u00b0C";
  }

  private static Sketch aroundZero(Plane plane, String unit, double spreads) {
    double reach = spreads * ColourScale.spread(plane);
    for (float value : plane.values()) {
      if (Float.isFinite(value)) {
        reach = Math.max(reach, Math.abs(value));
      }
    }
    return PlaneView.whole(plane, ColourScale.aroundZero(reach, unit), 1024, 900).sketch();
  }
}
