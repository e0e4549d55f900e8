package railglow.journal;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.zip.Deflater;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import railglow.thermal.CountSamples;

/**
 * Prints what ways of storing frames cost and give. Run with {@code mvn -Pslow test
 * -Dtest=FrameCodecMeasurement}; times are of this machine, one thread.
 */
@Tag("slow")
class FrameCodecMeasurement {
  private static final Path RECORDED =
      Path.of("..", "shared", "thermal", "a_lepton3_static_489.npy");

  private interface Way {
    /** Bytes that a frame takes. */
    int store(short[] counts, int index);
  }

  @Test
  void print() throws IOException {
    List<short[]> white = noise(640, 512, 0);
    List<short[]> smoothed = noise(640, 512, 0.113);
    StringBuilder table = new StringBuilder();
    long riceNanos = table(table, "640 x 512, white noise of 5 counts, drift", white, 640, 512);
    table(table, "640 x 512, noise smoothed in time by the camera", smoothed, 640, 512);
    if (Files.exists(RECORDED)) {
      table(table, "104 x 58, recorded", recorded(), 104, 58);
    } else {
      table.append("recorded frames are not here: left out\n");
    }
    System.out.print(table);
    assertTrue(riceNanos < 1_000_000_000L / 60, "keeps up with 640 x 512 at 60 Hz on one core");
  }

  private static long table(
      StringBuilder out, String title, List<short[]> frames, int width, int height) {
    out.append(title).append('\n');
    line(out, "raw", frames, (counts, i) -> 2 * counts.length);
    line(out, "deflate 1", frames, deflate(width * height, false, 1));
    line(out, "difference, byte planes, deflate 1", frames, deflate(width * height, true, 1));
    line(out, "difference, byte planes, deflate 6", frames, deflate(width * height, true, 6));
    RiceCodec rice = new RiceCodec(width, height);
    ByteBuffer buffer = ByteBuffer.allocateDirect(rice.maxBytes()).order(ByteOrder.LITTLE_ENDIAN);
    return line(
        out,
        "rice",
        frames,
        (counts, i) -> {
          buffer.clear();
          rice.encode(new CountSamples(width, height, counts), i % 64 == 0, buffer);
          return buffer.position();
        });
  }

  /** The time a frame takes, in nanoseconds: the best of three rounds. */
  private static long line(StringBuilder out, String name, List<short[]> frames, Way way) {
    long best = Long.MAX_VALUE;
    long bytes = 0;
    for (int round = 0; round < 3; round++) {
      bytes = 0;
      long start = System.nanoTime();
      for (int i = 0; i < frames.size(); i++) {
        bytes += way.store(frames.get(i), i);
      }
      best = Math.min(best, (System.nanoTime() - start) / frames.size());
    }
    double pixels = (double) frames.size() * frames.get(0).length;
    out.append(
        String.format(
            "  %-36s %5.2f bits a pixel, %5.1f %% of raw, %7.2f ms a frame%n",
            name, 8 * bytes / pixels, 100 * bytes / (2 * pixels), best / 1e6));
    return best;
  }

  private static Way deflate(int pixels, boolean difference, int level) {
    short[] before = new short[pixels];
    byte[] planes = new byte[2 * pixels];
    byte[] packed = new byte[2 * pixels + 1000];
    return (counts, index) -> {
      for (int i = 0; i < pixels; i++) {
        int value = difference ? (short) (counts[i] - before[i]) : counts[i];
        int code = difference ? value << 1 ^ value >> 31 : value;
        planes[difference ? i : 2 * i + 1] = (byte) (code >>> 8);
        planes[difference ? pixels + i : 2 * i] = (byte) code;
      }
      System.arraycopy(counts, 0, before, 0, pixels);
      Deflater deflater = new Deflater(level);
      deflater.setInput(planes);
      deflater.finish();
      int length = deflater.deflate(packed);
      deflater.end();
      return length;
    };
  }

  private static List<short[]> noise(int width, int height, double smoothing) {
    Random random = new Random(7);
    double[] state = new double[width * height];
    List<short[]> frames = new ArrayList<>();
    for (int f = 0; f < 40; f++) {
      short[] counts = new short[width * height];
      double drift = 29_800 + 0.3 * f;
      for (int i = 0; i < counts.length; i++) {
        double value = 5 * random.nextGaussian();
        if (smoothing > 0) {
          // starts in the steady state of the filter
          double steady = Math.sqrt(smoothing / (2 - smoothing));
          state[i] = f == 0 ? steady * value : state[i] + smoothing * (value - state[i]);
          value = state[i];
        }
        counts[i] = (short) Math.round(drift + i % width * 0.2 + value);
      }
      frames.add(counts);
    }
    return frames;
  }

  private static List<short[]> recorded() throws IOException {
    ByteBuffer bytes = ByteBuffer.wrap(Files.readAllBytes(RECORDED)).order(ByteOrder.LITTLE_ENDIAN);
    bytes.position(10 + bytes.getShort(8));
    List<short[]> frames = new ArrayList<>();
    while (bytes.remaining() >= 2 * 104 * 58) {
      short[] counts = new short[104 * 58];
      bytes.asShortBuffer().get(counts);
      bytes.position(bytes.position() + 2 * counts.length);
      frames.add(counts);
    }
    return frames;
  }
}
