package railglow.run.reduction;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import railglow.camera.CameraProfile;
import railglow.camera.CountScale;
import railglow.camera.Endian;
import railglow.camera.FrameDecoder;
import railglow.camera.FramePool;
import railglow.camera.HottestPixel;
import railglow.camera.RawLayout;
import railglow.camera.SampleType;
import railglow.journal.CameraFacts;
import railglow.journal.FrameStoreWriter;
import railglow.journal.RunHeader;
import railglow.observed.Edge;
import railglow.observed.Frame;
import railglow.pulse.CycleWindow;
import railglow.pulse.PulseSequence;
import railglow.pulse.Timeline;
import railglow.safety.Envelope;
import railglow.thermal.CountSamples;
import railglow.thermal.DetectionSettings;
import railglow.thermal.Look;

/**
 * All that is ours of a frame's way, on one thread: bytes, decoding, hottest pixel, marks, motion,
 * labels, quarters, frame store. A noisy still board of warm rectangles; every edge is made in
 * time.
 */
final class FramePath implements AutoCloseable {
  static final double FRAMES_PER_SECOND = 60;
  static final int CYCLES = 60;
  private static final int IMAGES = 8;
  private final byte[][] images = new byte[IMAGES][];
  private final FrameDecoder decoder;
  private final FramePool pool;
  private final HottestPixel hottest;
  private final FrameStoreWriter store;
  private final Reduction reduction;
  private final RunHeader header;
  private final Random choice = new Random(5);
  private long frames;
  private long looks;

  /**
   * @param folder for the frame store; null for none
   */
  FramePath(int width, int height, Path folder) throws IOException {
    this(width, height, folder, CYCLES);
  }

  /** As {@link #FramePath(int, int, Path)}, for so many cycles of 2 s. */
  FramePath(int width, int height, Path folder, int cycles) throws IOException {
    header = header(width, height, cycles);
    decoder =
        new FrameDecoder(
            RawLayout.packed(width, height, SampleType.U16, Endian.LITTLE),
            CountScale.linear(0.01, -273.15));
    for (int k = 0; k < IMAGES; k++) {
      images[k] = image(width, height, k);
    }
    pool = new FramePool(4, decoder::newSamples);
    hottest =
        new HottestPixel(
            new CameraProfile(
                "camera", width, height, FRAMES_PER_SECOND, 0.01, -273.15, 0.05, 0.03, 0.01));
    store =
        folder == null
            ? null
            : FrameStoreWriter.create(
                folder.resolve("frames.rgf"),
                railglow.journal.SampleType.of(decoder.newSamples()),
                width,
                height);
    reduction =
        new Reduction(
            header,
            decoder.newSamples(),
            new DeafListener() {

              @Override
              public void onLook(Look look, long nowNanos) {
                looks++;
              }

              @Override
              public void onReleased(Frame frame) {
                keep(frame);
              }
            });
    for (int c = 0; c < header.cycles().size(); c++) {
      CycleWindow cycle = header.cycles().get(c);
      reduction.onEdge(new Edge(2 * c, true, 1.5, cycle.onNanos(), cycle.onNanos() + 1_000_000));
      reduction.onEdge(
          new Edge(2 * c + 1, false, 0, cycle.offNanos(), cycle.offNanos() + 1_000_000));
    }
    reduction.allEdgesKnown();
  }

  private static RunHeader header(int width, int height, int count) {
    PulseSequence sequence =
        new PulseSequence("t", "test", 1.5, 2.0, 2.0, 4, count, false, 1.0, 1.0, 0.05, 70, 30);
    List<CycleWindow> cycles = new ArrayList<>(Timeline.of(sequence).cycles());
    CameraFacts camera =
        new CameraFacts(
            "camera", width, height, "uint16", 60, 0.01, -273.15, 0.05, 0.03, 0.01, true, false, 1,
            65_535);
    return new RunHeader(
        1,
        "test",
        Instant.EPOCH,
        0,
        "run",
        "",
        "",
        sequence,
        Envelope.OPEN,
        camera,
        "",
        0,
        List.of(),
        DetectionSettings.usual(2, 0.01, 0.05, 4, count),
        cycles,
        Map.of(),
        List.of());
  }

  private static byte[] image(int width, int height, long seed) {
    Random parts = new Random(99);
    int[] counts = new int[width * height];
    java.util.Arrays.fill(counts, 29_000);
    for (int part = 0; part < width * height / 400; part++) {
      int w = 4 + parts.nextInt(20);
      int h = 4 + parts.nextInt(20);
      int left = parts.nextInt(Math.max(1, width - w));
      int top = parts.nextInt(Math.max(1, height - h));
      int warmer = parts.nextInt(300);
      for (int y = top; y < Math.min(height, top + h); y++) {
        for (int x = left; x < Math.min(width, left + w); x++) {
          counts[y * width + x] = 29_000 + warmer;
        }
      }
    }
    Random noise = new Random(seed);
    byte[] bytes = new byte[2 * counts.length];
    for (int i = 0; i < counts.length; i++) {
      int count = (int) Math.round(counts[i] + 5 * noise.nextGaussian());
      bytes[2 * i] = (byte) count;
      bytes[2 * i + 1] = (byte) (count >> 8);
    }
    return bytes;
  }

  /** The next frame, all the way. */
  void next() {
    Frame frame = decoded();
    if (frame.arrivalNanos() < 1_900_000_000L) {
      hottest.learn(frame);
    } else {
      hottest.look(frame);
    }
    reduction.onFrame(frame);
  }

  /** The next frame as it leaves the decoder; to be given to {@link #keep}. */
  Frame decoded() {
    Frame frame = pool.take();
    frame.begin(frames, Math.round(frames * 1e9 / FRAMES_PER_SECOND));
    frames++;
    // never the same image twice running: that would be a frozen frame
    int k = (int) (2 * frames % IMAGES) + choice.nextInt(2);
    decoder.decode(images[k], 0, frame.samples());
    return frame;
  }

  void keep(Frame frame) {
    try {
      if (store != null) {
        store.append(frame);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    pool.giveBack(frame);
  }

  CountSamples like() {
    return (CountSamples) decoder.newSamples();
  }

  HottestPixel hottest() {
    return hottest;
  }

  /** Frames given so far. */
  long frames() {
    return frames;
  }

  /** Looks made so far. */
  long looks() {
    return looks;
  }

  Reduced finish() {
    return reduction.finish();
  }

  @Override
  public void close() throws IOException {
    if (store != null) {
      store.close();
    }
  }
}
