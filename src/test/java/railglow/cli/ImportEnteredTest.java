package railglow.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static railglow.cli.Typed.railglow;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railglow.board.HeatPath;
import railglow.journal.Findings;
import railglow.journal.FindingsFile;

/** What is entered for frames that were recorded elsewhere. */
class ImportEnteredTest {
  private static final int WIDTH = 256;
  private static final int HEIGHT = 192;
  private static final int FRAMES_PER_CYCLE = 16;
  private static final int CYCLES = 8;

  /** Where the example's board file shows C37 in the picture. */
  private static final int COLUMN = 164;

  private static final int ROW = 114;
  @TempDir Path folder;

  @Test
  void anAbsoluteScaleWithoutItsStepIsRefusedBeforeAnythingIsMade() {
    assertTrue(
        railglow(
                2,
                "import",
                "--frames",
                "f.npy",
                "--edges",
                "e.csv",
                "--celsius-at-zero",
                "0 degC",
                "--runs",
                folder.resolve("runs").toString())
            .contains("--celsius-at-zero needs --kelvin-per-count"));
    assertTrue(Files.notExists(folder.resolve("runs")));
  }

  @Test
  void heatWhereTheClipSatInFramesRecordedElsewhereIsTakenForItsContact() throws Exception {
    String said =
        railglow(
            0,
            "import",
            "--frames",
            frames().toString(),
            "--edges",
            edges().toString(),
            "--frame-rate",
            "8 Hz",
            "--kelvin-per-count",
            "10 mK",
            "--celsius-at-zero",
            "-273.15 degC",
            "--board",
            "hx12",
            "--rail",
            "3V3",
            "--clip",
            "C37.1",
            "--reflected",
            "23 degC",
            "--runs",
            folder.resolve("runs").toString());
    assertTrue(said.contains("Found Heat where the clip on C37 pin 1 sits"), said);
    assertTrue(said.contains("mirrors 23 degC"), said);
    Findings findings = FindingsFile.read(run().resolve("findings.json"));
    assertEquals(HeatPath.Kind.CLIP, findings.lead().path().orElseThrow().kind());
    assertEquals(23, findings.trueRises().get(0).reflectedCelsius());
    railglow(0, "replay", run().toString(), "--verify");
    String corrected = railglow(0, "replay", run().toString(), "--clip", "C9");
    assertTrue(corrected.contains("Found Heat at C37"), corrected);
  }

  private Path run() throws IOException {
    try (Stream<Path> runs = Files.list(folder.resolve("runs"))) {
      return runs.findFirst().orElseThrow();
    }
  }

  private Path edges() throws IOException {
    StringBuilder table = new StringBuilder("time_s,state\n0.0,OFF\n");
    for (int cycle = 0; cycle < CYCLES; cycle++) {
      table.append(2 * cycle).append(".95,ON\n").append(2 * cycle + 1).append(".95,OFF\n");
    }
    return Files.writeString(folder.resolve("edges.csv"), table);
  }

  /** A spot of 2 pixels that warms within half a second, over white noise of 50 mK. */
  private Path frames() throws IOException {
    int count = FRAMES_PER_CYCLE * (CYCLES + 1);
    String header =
        "{'descr': '<u2', 'fortran_order': False, 'shape': (%d, %d, %d), }"
            .formatted(count, HEIGHT, WIDTH);
    header += " ".repeat(63 - (header.length() + 10) % 64) + "\n";
    ByteBuffer file =
        ByteBuffer.allocate(10 + header.length() + 2 * count * HEIGHT * WIDTH)
            .order(ByteOrder.LITTLE_ENDIAN);
    file.put((byte) 0x93).put("NUMPY".getBytes(StandardCharsets.US_ASCII));
    file.put((byte) 1).put((byte) 0).putShort((short) header.length());
    file.put(header.getBytes(StandardCharsets.US_ASCII));
    Random random = new Random(41);
    double warmth = 0;
    for (int frame = 0; frame < count; frame++) {
      double seconds = frame / 8.0;
      boolean on = seconds < 2 * CYCLES && seconds >= 0.95 && (seconds - 0.95) % 2 < 1;
      warmth += ((on ? 40 : 0) - warmth) * (1 - Math.exp(-0.125 / 0.5));
      for (int row = 0; row < HEIGHT; row++) {
        for (int column = 0; column < WIDTH; column++) {
          double square = Math.pow(column - COLUMN, 2) + Math.pow(row - ROW, 2);
          double counts =
              29_815 + warmth * Math.exp(-square / (2 * 2 * 2)) + 5 * random.nextGaussian();
          file.putShort((short) Math.round(counts));
        }
      }
    }
    return Files.write(folder.resolve("frames.npy"), file.array());
  }
}
