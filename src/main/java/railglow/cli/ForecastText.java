package railglow.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import railglow.board.readings.OperatingPoint;
import railglow.camera.CameraProfile;
import railglow.config.MeasuredCamera;
import railglow.pulse.PulseSequence;
import railglow.thermal.DetectionSettings;
import railglow.thermal.Forecast;
import railglow.thermal.PulseNoise;
import railglow.units.Quantity;
import railglow.units.Unit;

/** What a run could see, in what time, in words. */
final class ForecastText {
  /** Blur and body of a small part: common practice, no source. */
  private static final double BLUR_PIXELS = 2;

  private static final double BODY_SECONDS = 0.5;

  /** A dead short, a hard leak and a soft one: what a rail may be like when it was not read. */
  private static final double[] USUAL_FAULTS_OHMS = {0.05, 0.5, 5};

  private static final double[] AFTER_SECONDS = {10, 60, 600};

  private ForecastText() {}

  /**
   * @param railOhms what the rail reads; NaN when not known
   * @param kelvinPerWatt how much a watt in the fault warms it
   */
  static List<String> of(RunSetup setup, double railOhms, double kelvinPerWatt) {
    CameraProfile camera = setup.camera().profile();
    List<String> lines = new ArrayList<>();
    if (Double.isNaN(camera.noiseKelvin())) {
      lines.add("Forecast   none: the camera's descriptor gives no noise");
      powers(lines, setup, railOhms);
      return lines;
    }
    PulseSequence sequence = setup.sequence();
    DetectionSettings detection = Detection.settings(sequence, camera);
    PulseNoise noise =
        setup
            .measured()
            .flatMap(
                measured ->
                    measured.pulseNoise(camera.framesPerSecond(), detection.periodSeconds()))
            .orElse(PulseNoise.white(camera.noiseKelvin(), camera.framesPerSecond()));
    Forecast forecast =
        Forecast.of(detection, camera.width(), camera.height(), noise, BLUR_PIXELS, BODY_SECONDS);
    lines.add(
        line(
            "Forecast   for a small part (blur %.0f px, %.1f s to warm), noise %s:",
            BLUR_PIXELS, BODY_SECONDS, words(noise, setup)));
    for (double seconds : AFTER_SECONDS) {
      int cycle = (int) Math.floor(seconds / detection.cycleSeconds());
      if (cycle >= detection.minCycles() && cycle < detection.maxCycles()) {
        lines.add(smallest(forecast, cycle, detection));
      }
    }
    lines.add(smallest(forecast, detection.maxCycles(), detection));
    powers(lines, setup, railOhms);
    if (!Double.isNaN(railOhms)) {
      fault(lines, setup, forecast, railOhms, kelvinPerWatt);
    }
    return lines;
  }

  private static String words(PulseNoise noise, RunSetup setup) {
    String amount = Quantity.format(noise.noiseKelvin(), Unit.KELVIN) + " a frame, ";
    return setup.measured().flatMap(MeasuredCamera::noise).isPresent()
        ? amount
            + line(
                "measured; correlation with the next frame %.2f, with the pixel beside %.2f; with"
                    + " its drift %.2f times the variance these give; whole rows move by %.2f,"
                    + " columns by %.2f of a pixel's noise",
                noise.correlation(),
                (noise.horizontalCorrelation() + noise.verticalCorrelation()) / 2,
                noise.variancePart(),
                Math.sqrt(noise.rowVariancePart()),
                Math.sqrt(noise.columnVariancePart()))
        : amount + "white, as the descriptor says";
  }

  private static String smallest(Forecast forecast, int cycle, DetectionSettings detection) {
    return line(
        "           after %4.0f s a rise of %s is found with 95 %%",
        cycle * detection.cycleSeconds(),
        Quantity.format(forecast.smallestRiseKelvin(cycle), Unit.KELVIN));
  }

  private static void powers(List<String> lines, RunSetup setup, double railOhms) {
    double[] rails = Double.isNaN(railOhms) ? USUAL_FAULTS_OHMS : new double[] {railOhms};
    for (double ohms : rails) {
      lines.add(gets(setup, ohms));
    }
  }

  /** What the fault would get and what the leads would waste. */
  private static String gets(RunSetup setup, double railOhms) {
    PulseSequence sequence = setup.sequence();
    double leads = leadOhms(setup);
    OperatingPoint point =
        OperatingPoint.of(sequence.levelVolts(), sequence.maxAmperes(), railOhms + leads);
    double squared = point.amperes() * point.amperes();
    return line(
        "           a rail of %s takes %s%s: %s in the board, %s in the leads",
        Quantity.format(railOhms, Unit.OHM),
        Quantity.format(point.amperes(), Unit.AMPERE),
        point.constantCurrent() ? " (the supply limits it)" : "",
        Quantity.format(squared * railOhms, Unit.WATT),
        Quantity.format(squared * leads, Unit.WATT));
  }

  private static double leadOhms(RunSetup setup) {
    return setup.bench().sensedAtBoard() ? 0 : setup.bench().leadOhms();
  }

  private static void fault(
      List<String> lines,
      RunSetup setup,
      Forecast forecast,
      double railOhms,
      double kelvinPerWatt) {
    PulseSequence sequence = setup.sequence();
    OperatingPoint point =
        OperatingPoint.of(sequence.levelVolts(), sequence.maxAmperes(), railOhms + leadOhms(setup));
    double rise = point.amperes() * point.amperes() * railOhms * kelvinPerWatt;
    double seconds = forecast.secondsToFind(rise, 0.5);
    lines.add(
        line(
            "           at %s K/W that is a rise of %s: %s",
            number(kelvinPerWatt),
            Quantity.format(rise, Unit.KELVIN),
            Double.isInfinite(seconds)
                ? "likely not found before the cap"
                : "found after about " + Quantity.format(seconds, Unit.SECOND) + " of pulsing"));
  }

  private static String number(double value) {
    return line(value == Math.rint(value) ? "%.0f" : "%.2f", value);
  }

  private static String line(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }
}
