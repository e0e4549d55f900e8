package railglow.config;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import railglow.camera.noise.NoiseFigures;
import railglow.units.Quantity;
import railglow.units.QuantityException;
import railglow.units.Unit;

/**
 * What was measured of a bench's camera, in a file of its own beside the bench file: {@code
 * bench-mine.yaml} has {@code bench-mine-measured.yaml}. Written by {@code railglow bench}, read by
 * every command that reads the bench file; deleting it brings the descriptor's figures back.
 */
public final class MeasuredCameraFile {
  private static final int MOST_PULSES = 100_000;
  private static final double MOST_COUNTS = 1e6;

  private MeasuredCameraFile() {}

  /** Where the measurements of a bench are kept. */
  public static Path beside(Path benchFile) {
    return BesideBench.file(benchFile, "measured");
  }

  /**
   * Reads what is kept beside a bench file; empty when nothing is.
   *
   * @throws ConfigException with every problem found
   */
  public static Optional<MeasuredCamera> readBeside(Path benchFile) throws ConfigException {
    Path path = beside(benchFile);
    return Files.exists(path) ? Optional.of(read(path)) : Optional.empty();
  }

  /**
   * @throws ConfigException with every problem found
   */
  public static MeasuredCamera read(Path path) throws ConfigException {
    return from(ConfigFile.read(path).as(FileKind.MEASURED));
  }

  static MeasuredCamera from(ConfigFile file) throws ConfigException {
    ConfigSection root = file.root();
    String camera = root.text("camera");
    Optional<MeasuredTimes> times = root.optionalSection("times").map(MeasuredCameraFile::times);
    Optional<MeasuredNoise> noise = root.optionalSection("noise").map(MeasuredCameraFile::noise);
    file.finish();
    return new MeasuredCamera(camera, times, noise);
  }

  /**
   * Writes the file whole or not at all.
   *
   * @throws IOException when it can't be written
   */
  public static void write(MeasuredCamera measured, Path path) throws IOException {
    BesideBench.write(path, text(measured));
  }

  static String text(MeasuredCamera measured) {
    StringBuilder text = new StringBuilder();
    text.append(
        "# Measured by `railglow bench`. Used in place of the camera descriptor's figures;\n");
    text.append("# delete this file, or a section of it, to go back to those.\n");
    line(text, "camera: %s", BesideBench.quoted(measured.cameraName()));
    measured.times().ifPresent(times -> write(text, times));
    measured.noise().ifPresent(noise -> write(text, noise));
    return text.toString();
  }

  private static void write(StringBuilder text, MeasuredTimes times) {
    line(text, "times:");
    line(text, "  measured: %s", times.measured());
    line(text, "  pulses: %d", times.pulses());
    line(text, "  latency: %s", seconds(times.latencySeconds()));
    line(text, "  latency-error: %s", seconds(times.latencyErrorSeconds()));
    line(text, "  time-constant: %s", seconds(times.timeConstantSeconds()));
    line(text, "  # 0 s: not told by the frames, taken from the descriptor");
    line(text, "  time-constant-error: %s", seconds(times.timeConstantErrorSeconds()));
  }

  private static void write(StringBuilder text, MeasuredNoise noise) {
    NoiseFigures figures = noise.figures();
    Unit unit = unit(noise.inKelvin());
    line(text, "noise:");
    line(text, "  measured: %s", noise.measured());
    line(text, "  frames: %d", figures.frames());
    line(text, "  lasted: %s", seconds(figures.seconds()));
    line(text, "  unit: %s", noise.inKelvin() ? "kelvin" : "counts");
    line(text, "  one-pixel: %s", Quantity.format(figures.temporal(), unit));
    line(text, "  frame-to-frame: %s", Quantity.format(figures.frameToFrame(), unit));
    line(text, "  next-frame-correlation: %.4f", figures.nextFrameCorrelation());
    line(text, "  side-by-side-correlation: %.4f", figures.horizontalCorrelation());
    line(text, "  above-and-below-correlation: %.4f", figures.verticalCorrelation());
    line(text, "  rows-together: %s", Quantity.format(figures.rowTogether(), unit));
    line(text, "  columns-together: %s", Quantity.format(figures.columnTogether(), unit));
    line(text, "  whole-frame: %s", Quantity.format(figures.frameTogether(), unit));
    line(text, "  # Allan deviation of one pixel for each averaging time");
    line(text, "  allan-deviation:");
    for (int i = 0; i < figures.averagingSeconds().length; i++) {
      line(
          text,
          "    - %s = %s",
          seconds(figures.averagingSeconds()[i]),
          Quantity.format(figures.allanDeviations()[i], unit));
    }
  }

  private static MeasuredTimes times(ConfigSection section) {
    return new MeasuredTimes(
        instant(section),
        section.quantity("latency", Unit.SECOND, 0, 5),
        section.quantity("latency-error", Unit.SECOND, 0, 5),
        section.quantity("time-constant", Unit.SECOND, 0, 30),
        section.quantity("time-constant-error", Unit.SECOND, 0, 30),
        section.integer("pulses", 1, MOST_PULSES));
  }

  private static MeasuredNoise noise(ConfigSection section) {
    String word = section.text("unit");
    if (!word.equals("kelvin") && !word.equals("counts")) {
      section.report("unit", "is '" + word + "'; write kelvin or counts");
    }
    boolean kelvin = word.equals("kelvin");
    Unit unit = unit(kelvin);
    double most = kelvin ? 100 : MOST_COUNTS;
    List<String> lines = section.texts("allan-deviation");
    double[] averaging = new double[lines.size()];
    double[] deviations = new double[lines.size()];
    for (int i = 0; i < averaging.length; i++) {
      String[] sides = lines.get(i).split("=", 2);
      try {
        averaging[i] = Quantity.parse(sides[0], Unit.SECOND);
        deviations[i] = Quantity.parse(sides.length == 2 ? sides[1] : "", unit);
      } catch (QuantityException e) {
        section.report(
            "allan-deviation",
            "has the line '" + lines.get(i) + "'; write lines such as '- 40 ms = 50 mK'");
        break;
      }
      if (i > 0 && !(averaging[i] > averaging[i - 1]) || !(deviations[i] >= 0)) {
        section.report("allan-deviation", "must ascend in time and hold no number below zero");
        break;
      }
    }
    return new MeasuredNoise(
        instant(section),
        kelvin,
        new NoiseFigures(
            section.integer("frames", 1, Integer.MAX_VALUE),
            section.quantity("lasted", Unit.SECOND, 0, 1e7),
            section.quantity("one-pixel", unit, 0, most),
            section.quantity("frame-to-frame", unit, 0, most),
            section.number("next-frame-correlation", -1, 1),
            section.number("side-by-side-correlation", -1, 1),
            section.number("above-and-below-correlation", -1, 1),
            section.quantity("rows-together", unit, 0, most),
            section.quantity("columns-together", unit, 0, most),
            section.quantity("whole-frame", unit, 0, most),
            averaging,
            deviations));
  }

  private static Instant instant(ConfigSection section) {
    String text = section.text("measured");
    try {
      return Instant.parse(text);
    } catch (DateTimeException e) {
      section.report("measured", "is '" + text + "'; write a time like 2026-01-31T12:00:00Z");
      return Instant.EPOCH;
    }
  }

  private static Unit unit(boolean kelvin) {
    return kelvin ? Unit.KELVIN : Unit.COUNT;
  }

  private static String seconds(double value) {
    return Quantity.format(value, Unit.SECOND);
  }

  private static void line(StringBuilder text, String format, Object... values) {
    text.append(String.format(Locale.ROOT, format, values)).append('\n');
  }
}
