package railglow.process;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import railglow.sim.BenchScenario;
import railglow.sim.BenchScenarios;
import railglow.sim.BenchWorld;
import railglow.sim.truth.TruthLog;

/** Minutes of the simulated bench written as files to import: frames and the table of edges. */
final class RecordedMinutes {
  private static final double PERIOD_SECONDS = 2;
  private final Path frames;
  private final Path edges;

  private RecordedMinutes(Path frames, Path edges) {
    this.frames = frames;
    this.edges = edges;
  }

  Path frames() {
    return frames;
  }

  Path edges() {
    return edges;
  }

  /**
   * Pulses at 1 V with a period of 2 s, one second off and one second on, from the first second.
   */
  static RecordedMinutes write(Path folder, double minutes) throws IOException {
    BenchScenario scenario = BenchScenarios.hx12();
    BenchWorld world = new BenchWorld(scenario, 0, new TruthLog());
    world.receive("VOLT 1;CURR 2", 0);
    int width = scenario.camera().width();
    int height = scenario.camera().height();
    double rate = scenario.camera().framesPerSecond();
    int count = (int) Math.round(minutes * 60 * rate);
    short[] counts = new short[width * height];
    ByteBuffer bytes = ByteBuffer.allocate(2 * counts.length).order(ByteOrder.LITTLE_ENDIAN);
    StringBuilder table = new StringBuilder("time_s,state\n");
    Path frames = folder.resolve("minutes.npy");
    boolean on = false;
    try (OutputStream out = Files.newOutputStream(frames)) {
      out.write(npyHeader(count, height, width));
      for (int i = 0; i < count; i++) {
        long now = world.exposureNanos(world.nextFrame());
        boolean wanted = now * 1e-9 % PERIOD_SECONDS >= PERIOD_SECONDS / 2;
        if (wanted != on) {
          on = wanted;
          world.receive(on ? "OUTP ON" : "OUTP OFF", now);
          table.append(String.format(Locale.ROOT, "%.6f,%s%n", now * 1e-9, on ? "ON" : "OFF"));
        }
        world.takeFrame(now, counts);
        bytes.clear().asShortBuffer().put(counts);
        out.write(bytes.array());
      }
    }
    if (on) {
      table.append(String.format(Locale.ROOT, "%.6f,OFF%n", count / rate));
    }
    Path edges = folder.resolve("edges.csv");
    Files.writeString(edges, table.toString());
    return new RecordedMinutes(frames, edges);
  }

  /**
   * NumPy's array format, version 1.0: magic, version, length of the padded description, then it.
   */
  private static byte[] npyHeader(int frames, int rows, int columns) {
    String described =
        String.format(
            Locale.ROOT,
            "{'descr': '<u2', 'fortran_order': False, 'shape': (%d, %d, %d), }",
            frames,
            rows,
            columns);
    int length = (10 + described.length() + 1 + 63) / 64 * 64 - 10;
    String padded = described + " ".repeat(length - described.length() - 1) + "\n";
    ByteBuffer header = ByteBuffer.allocate(10 + length).order(ByteOrder.LITTLE_ENDIAN);
    header.put((byte) 0x93).put("NUMPY".getBytes(StandardCharsets.US_ASCII));
    header.put((byte) 1).put((byte) 0).putShort((short) length);
    return header.put(padded.getBytes(StandardCharsets.US_ASCII)).array();
  }
}
