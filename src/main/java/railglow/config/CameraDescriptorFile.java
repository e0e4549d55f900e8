package railglow.config;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import railglow.camera.CameraDescriptor;
import railglow.camera.CountScale;
import railglow.camera.Endian;
import railglow.camera.FrameMarker;
import railglow.camera.Orientation;
import railglow.camera.RawLayout;
import railglow.camera.SampleType;
import railglow.camera.Telemetry;
import railglow.camera.TelemetryField;
import railglow.units.Quantity;
import railglow.units.QuantityException;
import railglow.units.Unit;

/** Reads a camera's descriptor. */
public final class CameraDescriptorFile {
  private static final int MAX_PIXELS_ASIDE = 8192;
  private static final int MAX_BYTES = 1 << 24;

  private CameraDescriptorFile() {}

  /**
   * Reads and checks a descriptor.
   *
   * @throws ConfigException with every problem found
   */
  public static CameraDescriptor read(Path path) throws ConfigException {
    return from(ConfigFile.read(path).as(FileKind.CAMERA));
  }

  static CameraDescriptor from(ConfigFile file) throws ConfigException {
    ConfigSection root = file.root();
    String name = root.text("name");
    Telemetry telemetry =
        root.optionalSection("telemetry")
            .map(CameraDescriptorFile::telemetry)
            .orElse(Telemetry.NONE);
    Optional<RawLayout> layout = layout(root.section("frame"), orientation(root), telemetry);
    CountScale scale =
        root.optionalSection("scale").map(CameraDescriptorFile::scale).orElse(CountScale.unknown());
    double rate = root.quantity("rate", Unit.HERTZ, 0.1, 2000);
    double noise = root.optionalQuantity("noise", Unit.KELVIN, 0.001, 10).orElse(Double.NaN);
    double latency = root.quantity("latency", Unit.SECOND, 0, 5);
    double timeConstant = root.quantity("time-constant", Unit.SECOND, 0, 30);
    double saturation = root.optionalNumber("saturation", -32_768, 1e6).orElse(Double.NaN);
    double settling = root.optionalQuantity("shutter-settling", Unit.SECOND, 0, 60).orElse(1);
    if (scale.isTable() && layout.isPresent() && layout.get().sample() == SampleType.F32) {
      root.report("scale", "is a table of counts, but the samples are f32; leave the table out");
    }
    file.finish();
    return new CameraDescriptor(
        name,
        layout.orElseThrow(),
        scale,
        rate,
        noise,
        latency,
        timeConstant,
        saturation,
        settling);
  }

  private static Orientation orientation(ConfigSection root) {
    return root.optionalSection("orientation")
        .map(
            section ->
                new Orientation(
                    section
                        .optionalChoice("mirror", Orientation.Mirror.class)
                        .orElse(Orientation.Mirror.NONE),
                    section
                        .optionalChoice("turn", Orientation.Turn.class)
                        .orElse(Orientation.Turn.NONE)))
        .orElse(Orientation.AS_STORED);
  }

  private static Optional<RawLayout> layout(
      ConfigSection frame, Orientation orientation, Telemetry telemetry) {
    int width = frame.integer("width", 1, MAX_PIXELS_ASIDE);
    int height = frame.integer("height", 1, MAX_PIXELS_ASIDE);
    SampleType sample = frame.choice("sample", SampleType.class);
    Endian endian =
        sample == SampleType.U8
            ? frame.optionalChoice("byte-order", Endian.class).orElse(Endian.LITTLE)
            : frame.choice("byte-order", Endian.class);
    int firstColumn = frame.optionalInteger("first-column", 0, MAX_PIXELS_ASIDE).orElse(0);
    int packed = (firstColumn + width) * sample.bytes();
    int stride = frame.optionalInteger("row-stride-bytes", 1, MAX_BYTES).orElse(packed);
    int headerBytes = frame.optionalInteger("header-bytes", 0, MAX_BYTES).orElse(0);
    int headerRows = frame.optionalInteger("header-rows", 0, MAX_PIXELS_ASIDE).orElse(0);
    int trailerRows = frame.optionalInteger("trailer-rows", 0, MAX_PIXELS_ASIDE).orElse(0);
    int trailerBytes = frame.optionalInteger("trailer-bytes", 0, MAX_BYTES).orElse(0);
    OptionalInt stated = frame.optionalInteger("frame-bytes", 1, Integer.MAX_VALUE);
    try {
      RawLayout layout =
          new RawLayout(
              width,
              height,
              sample,
              endian,
              stride,
              headerBytes,
              headerRows,
              trailerRows,
              trailerBytes,
              firstColumn,
              orientation,
              telemetry);
      if (stated.isPresent() && stated.getAsInt() != layout.frameBytes()) {
        frame.report(
            "frame-bytes",
            "is "
                + stated.getAsInt()
                + ", but header, rows and trailer add up to "
                + layout.frameBytes());
      }
      return Optional.of(layout);
    } catch (IllegalArgumentException e) {
      frame.report("width", "and the rest of this section do not fit together: " + e.getMessage());
      return Optional.empty();
    }
  }

  private static Telemetry telemetry(ConfigSection section) {
    Optional<ConfigSection> counter = section.optionalSection("counter");
    Optional<ConfigSection> time = section.optionalSection("time");
    int step =
        counter.map(c -> c.optionalInteger("step", 1, 1000)).orElse(OptionalInt.empty()).orElse(1);
    double tick = time.map(t -> t.quantity("tick", Unit.SECOND, 1e-9, 10)).orElse(Double.NaN);
    Optional<TelemetryField> timeField = time.flatMap(CameraDescriptorFile::field);
    return new Telemetry(
        counter.flatMap(CameraDescriptorFile::field),
        step,
        Double.isNaN(tick) ? Optional.empty() : timeField,
        timeField.isPresent() ? tick : Double.NaN,
        section.optionalSection("marker").flatMap(CameraDescriptorFile::marker));
  }

  private static Optional<TelemetryField> field(ConfigSection section) {
    int offset = section.integer("offset", 0, MAX_BYTES);
    int bytes = section.integer("bytes", 1, 8);
    Endian endian = section.optionalChoice("byte-order", Endian.class).orElse(Endian.LITTLE);
    try {
      return Optional.of(new TelemetryField(offset, bytes, endian));
    } catch (IllegalArgumentException e) {
      section.report("bytes", "is " + bytes + "; allowed is 1, 2, 4 or 8");
      return Optional.empty();
    }
  }

  private static Optional<FrameMarker> marker(ConfigSection section) {
    int offset = section.integer("offset", 0, MAX_BYTES);
    String hex = section.text("hex");
    try {
      return Optional.of(new FrameMarker(offset, HexFormat.of().parseHex(hex.replace(" ", ""))));
    } catch (IllegalArgumentException e) {
      section.report("hex", "is '" + hex + "'; write pairs of hexadecimal digits, such as a5 5a");
      return Optional.empty();
    }
  }

  private static CountScale scale(ConfigSection section) {
    if (section.has("table")) {
      return table(section);
    }
    double perCount = section.quantity("kelvin-per-count", Unit.KELVIN, -100, 100);
    double zero =
        section.optionalQuantity("celsius-at-zero", Unit.CELSIUS, -1e6, 1e6).orElse(Double.NaN);
    if (perCount == 0) {
      section.report("kelvin-per-count", "is 0; leave the scale out when it is not known");
    }
    return Double.isNaN(perCount) || perCount == 0
        ? CountScale.unknown()
        : CountScale.linear(perCount, zero);
  }

  private static CountScale table(ConfigSection section) {
    List<Double> counts = new ArrayList<>();
    List<Double> celsius = new ArrayList<>();
    String advice = "; write lines such as '- 7000 = 12.5 degC', counts ascending";
    for (String line : section.texts("table")) {
      String[] sides = line.split("=", 2);
      try {
        counts.add(Double.parseDouble(sides[0].strip()));
        celsius.add(Quantity.parse(sides.length == 2 ? sides[1] : "", Unit.CELSIUS));
      } catch (NumberFormatException | QuantityException e) {
        section.report("table", "has the line '" + line + "'" + advice);
        return CountScale.unknown();
      }
    }
    try {
      return CountScale.table(
          counts.stream().mapToDouble(Double::doubleValue).toArray(),
          celsius.stream().mapToDouble(Double::doubleValue).toArray());
    } catch (IllegalArgumentException e) {
      section.report("table", "can't be used: " + e.getMessage() + advice);
      return CountScale.unknown();
    }
  }
}
