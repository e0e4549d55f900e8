package railglow.report;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import railglow.journal.Findings;
import railglow.journal.Journal;
import railglow.report.draw.ColourMap;
import railglow.report.draw.ColourScale;
import railglow.report.draw.PlaneView;
import railglow.report.draw.Sketch;
import railglow.thermal.DelayMap;
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
  static final String POWER_UNIT = "W/m\u00b2";
  private static final int MOST_CLOSE_VIEWS = 4;
  private static final double LEAST_SCORE = 4;

  /** At the least score an angle is good to 1/4 rad. */
  private static final double LEAST_DELAY_ERROR_DEGREES = 15;

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
                      placement,
                      texts);
              overlay(run, plane, picture.colours(), placement, texts)
                  .ifPresent(overlay -> figures.put(OVERLAY, overlay));
              figures.put(DIFFERENCE, picture.whole());
              for (int i = 0; i < Math.min(MOST_CLOSE_VIEWS, sources.size()); i++) {
                figures.put(close(i), picture.close(i));
              }
            });
    run.plane("source").ifPresent(p -> figures.put("source", fromZero(p, POWER_UNIT)));
    run.plane("quadrature")
        .ifPresent(p -> figures.put("quadrature", aroundZero(p, run.riseUnit(), 5)));
    delay(run).ifPresent(sketch -> figures.put("delay", sketch));
    run.plane("significance").ifPresent(p -> figures.put("significance", aroundZero(p, "z", 5)));
    run.plane("trust")
        .ifPresent(
            p ->
                figures.put(
                    "trust",
                    PlaneView.whole(
                            p,
                            new ColourScale(ColourMap.TEMPERATURE, 0, 1, texts.get("trust.unit")),
                            1024,
                            900)
                        .sketch()));
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

  /** How late the heat comes, where it is far enough from noise to say so. */
  private static Optional<Sketch> delay(RunContents run) {
    if (!run.planes().keySet().containsAll(List.of("in-phase", "quadrature"))) {
      return Optional.empty();
    }
    Plane delay =
        DelayMap.of(
            run.planes().get("in-phase"),
            run.planes().get("quadrature"),
            narrowest(run.journal().header().detection().filterSigmasPixels()),
            LEAST_SCORE);
    float[] values = delay.values();
    boolean any = false;
    for (int i = 0; i < values.length; i++) {
      double degrees = Math.toDegrees(values[i]);
      // what cools while the power is on is no delay, but a reflection or chance
      values[i] = degrees >= -LEAST_DELAY_ERROR_DEGREES ? (float) Math.max(0, degrees) : Float.NaN;
      any |= values[i] == values[i];
    }
    return any
        ? Optional.of(
            PlaneView.whole(delay, new ColourScale(ColourMap.DELAY, 0, 180, "\u00b0"), 1024, 900)
                .sketch())
        : Optional.empty();
  }

  private static double narrowest(double[] sigmas) {
    return Arrays.stream(sigmas).min().orElse(1);
  }

  /** The plain thermal mean is in degrees where the camera has an absolute scale. */
  static String backgroundUnit(RunContents run) {
    return backgroundUnit(run.journal());
  }

  static String backgroundUnit(Journal journal) {
    var camera = journal.header().camera();
    if (Double.isNaN(camera.kelvinPerCount())) {
      return "counts";
    }
    return Double.isNaN(camera.celsiusAtZero()) ? "K" : "\u00b0C";
  }

  private static Sketch fromZero(Plane plane, String unit) {
    double most = Double.MIN_NORMAL;
    for (float value : plane.values()) {
      most = Float.isFinite(value) ? Math.max(most, value) : most;
    }
    ColourScale colours = new ColourScale(ColourMap.TEMPERATURE, 0, most, unit);
    return PlaneView.whole(plane, colours, 1024, 900).sketch();
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
