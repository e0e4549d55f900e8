package railglow.report;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import railglow.journal.Findings;
import railglow.report.draw.ColourMap;
import railglow.report.draw.ColourScale;
import railglow.report.draw.PlaneView;
import railglow.report.draw.Sketch;
import railglow.thermal.HeatSource;
import railglow.thermal.Plane;

/**
 * Every drawing of a report, by name: {@code board}, {@code difference}, {@code source-1} …, {@code
 * trace} and the other planes, as far as the run has what they need. Pure.
 */
final class Figures {
  static final String DIFFERENCE = "difference";
  static final String OVERLAY = "board";
  static final String TRACE = "trace";
  private static final int MOST_CLOSE_VIEWS = 4;
  private static final double LEAST_SCORE = 4;

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
              overlay(run, plane, picture.colours(), placement, texts)
                  .ifPresent(overlay -> figures.put(OVERLAY, overlay));
              figures.put(DIFFERENCE, picture.whole());
              for (int i = 0; i < Math.min(MOST_CLOSE_VIEWS, sources.size()); i++) {
                figures.put(close(i), picture.close(i));
              }
            });
    run.plane("quadrature")
        .ifPresent(p -> figures.put("quadrature", aroundZero(p, run.riseUnit(), 5)));
    delay(run).ifPresent(sketch -> figures.put("delay", sketch));
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

  private static Optional<Sketch> overlay(
      RunContents run, Plane plane, ColourScale colours, Placement placement, Texts texts) {
    if (run.findings().isEmpty() || run.findings().get().sources().isEmpty()) {
      return Optional.empty();
    }
    Findings findings = run.findings().get();
    return placement
        .board()
        .flatMap(
            board ->
                run.photograph(board)
                    .map(
                        photograph ->
                            new BoardOverlay(
                                    plane,
                                    colours,
                                    findings.sources(),
                                    findings.suspects(),
                                    board,
                                    photograph,
                                    texts)
                                .sketch()));
  }

  /**
   * How late the heat comes: the angle of the slow part against ON minus OFF, 0 to 180 degrees of
   * the pulse's period, where the statistic is far enough from noise to give one.
   */
  private static Optional<Sketch> delay(RunContents run) {
    if (!run.planes().keySet().containsAll(List.of("in-phase", "quadrature", "significance"))) {
      return Optional.empty();
    }
    float[] inPhase = run.planes().get("in-phase").values();
    float[] slow = run.planes().get("quadrature").values();
    float[] score = run.planes().get("significance").values();
    Plane delay = run.planes().get("in-phase").copy();
    boolean any = false;
    for (int i = 0; i < inPhase.length; i++) {
      boolean warm = score[i] >= LEAST_SCORE && (inPhase[i] > 0 || slow[i] > 0);
      double degrees = Math.toDegrees(Math.atan2(slow[i], inPhase[i]));
      delay.values()[i] = warm ? (float) Math.max(0, degrees) : Float.NaN;
      any |= warm;
    }
    return any
        ? Optional.of(
            PlaneView.whole(delay, new ColourScale(ColourMap.DELAY, 0, 180, "\u00b0"), 1024, 900)
                .sketch())
        : Optional.empty();
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
