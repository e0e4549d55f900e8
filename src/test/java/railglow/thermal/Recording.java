package railglow.thermal;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.function.Consumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Frames recorded elsewhere, read where the folder is there. The folder is the system property
 * {@code railglow.recordings}, or {@code ../shared/thermal}. A recording without times is taken at
 * 8 frames a second.
 */
public record Recording(List<Samples> images, double[] seconds) {
  private static final double STEADY_RATE = 8;

  /** Known to be damaged or repeated, see the README beside the recordings. */
  private static final Set<Integer> FAULTY = Set.of(11, 12, 260, 261, 267, 280, 292, 293);

  public static Path folder() {
    return Path.of(System.getProperty("railglow.recordings", "../shared/thermal"));
  }

  /** Reads a recording with its frame times; skips the test when it is not there. */
  public static Recording require(String name) {
    Path file = folder().resolve(name + ".npy");
    assumeTrue(Files.isReadable(file), "no recordings: " + file + " is not there");
    try {
      return read(name);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  public static Recording read(String name) throws IOException {
    ByteBuffer bytes =
        ByteBuffer.wrap(Files.readAllBytes(folder().resolve(name + ".npy")))
            .order(ByteOrder.LITTLE_ENDIAN);
    int headerLength = bytes.getShort(8) & 0xFFFF;
    String header = new String(bytes.array(), 10, headerLength, StandardCharsets.US_ASCII);
    Matcher shape =
        Pattern.compile("'<(u2|f4)'.*\\((\\d+), (\\d+), (\\d+)\\)", Pattern.DOTALL).matcher(header);
    if (!shape.find()) {
      throw new IOException(name + " is not a u16 or f32 recording: " + header);
    }
    int n = Integer.parseInt(shape.group(2));
    int height = Integer.parseInt(shape.group(3));
    int width = Integer.parseInt(shape.group(4));
    boolean counts = shape.group(1).equals("u2");
    bytes.position(10 + headerLength);
    Samples[] images = new Samples[n];
    for (int i = 0; i < n; i++) {
      images[i] = counts ? counts(bytes, width, height) : floats(bytes, width, height);
    }
    return new Recording(List.of(images), seconds(name, n));
  }

  private static Samples counts(ByteBuffer bytes, int width, int height) {
    short[] one = new short[width * height];
    for (int p = 0; p < one.length; p++) {
      one[p] = bytes.getShort();
    }
    return new CountSamples(width, height, one);
  }

  private static Samples floats(ByteBuffer bytes, int width, int height) {
    float[] one = new float[width * height];
    for (int p = 0; p < one.length; p++) {
      one[p] = bytes.getFloat();
    }
    return new FloatSamples(width, height, one);
  }

  private static double[] seconds(String name, int n) throws IOException {
    double[] seconds = new double[n];
    Path file = folder().resolve(name + ".frames.csv");
    List<String> lines = Files.exists(file) ? Files.readAllLines(file) : null;
    for (int i = 0; i < n; i++) {
      seconds[i] =
          lines == null
              ? i / STEADY_RATE
              : Double.parseDouble(lines.get(i + 1).split(",")[1]) / 1000;
    }
    return seconds;
  }

  public int frames() {
    return images.size();
  }

  public int width() {
    return images.get(0).width();
  }

  public int height() {
    return images.get(0).height();
  }

  public Samples frame(int index) {
    return images.get(index);
  }

  /** A part of a recording under pulses that never were. */
  record Pulsed(Recording part, double period, double firstOn, int cycles) {
    DetectionSettings settings(double cameraTimeConstantSeconds) {
      return DetectionSettings.usual(
          period, cameraTimeConstantSeconds, 0.05, Math.min(4, cycles), cycles);
    }
  }

  /** Somewhere in it, of any period and phase. */
  Pulsed pulsed(SplittableRandom random, int columns, int rows) {
    Recording part =
        part(
            random.nextInt(width() - columns + 1),
            random.nextInt(height() - rows + 1),
            columns,
            rows);
    double length = seconds[frames() - 1];
    double period = length / (8 + 8 * random.nextDouble());
    double firstOn = period * (0.25 + random.nextDouble());
    int cycles = (int) Math.floor((length - firstOn + 0.25 * period) / period);
    return new Pulsed(part, period, firstOn, cycles);
  }

  /** A rectangle of every frame. */
  Recording part(int left, int top, int columns, int rows) {
    List<Samples> cut = new java.util.ArrayList<>();
    for (Samples image : images) {
      float[] values = new float[columns * rows];
      for (int y = 0; y < rows; y++) {
        for (int x = 0; x < columns; x++) {
          values[y * columns + x] = (float) image.valueAt((top + y) * image.width() + left + x);
        }
      }
      cut.add(new FloatSamples(columns, rows, values));
    }
    return new Recording(cut, seconds);
  }

  /** Without the frames that the camera room marks in the faulty recording. */
  Recording withoutFaulty() {
    List<Samples> kept = new java.util.ArrayList<>();
    double[] times = new double[frames()];
    for (int i = 0; i < frames(); i++) {
      if (!FAULTY.contains(i)) {
        times[kept.size()] = seconds[i];
        kept.add(images.get(i));
      }
    }
    return new Recording(kept, java.util.Arrays.copyOf(times, kept.size()));
  }

  /**
   * Which quarter a time lies in for pulses that go on at {@code firstOn + k period}; 0 outside.
   */
  static int quarterAt(double seconds, double firstOn, double period) {
    double phase = (seconds - firstOn) / period + 0.25;
    return 1 + (int) Math.floor((phase - Math.floor(phase)) * 4);
  }

  /** Runs the detector over the recording as if pulsed, with pulses first on at a time. */
  public Look detect(DetectionSettings settings, double firstOn) {
    return run(settings, firstOn, look -> {}).look();
  }

  /** The least family-wise p over looks after every cycle. */
  public double leastP(DetectionSettings settings, double firstOn) {
    double[] least = {1};
    run(
        settings,
        firstOn,
        look ->
            least[0] =
                Math.min(least[0], look.strongest() == null ? 1 : look.strongest().familyWiseP()));
    return least[0];
  }

  /** Runs the detector and hands on every look. */
  Detector run(DetectionSettings settings, double firstOn, Consumer<Look> eachLook) {
    Detector detector = new Detector(settings, width(), height());
    eachCycle(
        settings,
        firstOn,
        cycle -> {
          detector.addCycle(cycle);
          eachLook.accept(detector.look());
        });
    return detector;
  }

  /** Hands on the recording's cycles up to the settings' cap. */
  void eachCycle(DetectionSettings settings, double firstOn, Consumer<QuarterMeans> taker) {
    QuarterAccumulator sums = new QuarterAccumulator(width(), height(), 1);
    double period = settings.periodSeconds();
    int current = -1;
    int taken = 0;
    for (int i = 0; i < frames(); i++) {
      int cycle = (int) Math.floor((seconds[i] - firstOn) / period + 0.25);
      if (cycle != current) {
        taken += finish(sums, current, taken < settings.maxCycles(), taker);
        current = cycle;
      }
      if (cycle >= 0) {
        sums.add(quarterAt(seconds[i], firstOn, period), frame(i));
      }
    }
    if (seconds[frames() - 1] >= firstOn + (current + 0.75) * period - 0.2) {
      finish(sums, current, taken < settings.maxCycles(), taker);
    }
  }

  private static int finish(
      QuarterAccumulator sums, int cycle, boolean wanted, Consumer<QuarterMeans> taker) {
    if (cycle >= 0 && sums.eachQuarterHas(1) && wanted) {
      taker.accept(sums.finish(cycle));
      return 1;
    }
    sums.reset();
    return 0;
  }
}
