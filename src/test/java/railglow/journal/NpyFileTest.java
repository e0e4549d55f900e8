package railglow.journal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railglow.thermal.Plane;

class NpyFileTest {
  @TempDir Path temporary;

  static Plane plane(int width, int height, long seed) {
    Plane plane = new Plane(width, height);
    Random random = new Random(seed);
    for (int i = 0; i < plane.values().length; i++) {
      plane.values()[i] = Float.intBitsToFloat(random.nextInt());
    }
    return plane;
  }

  @Property(tries = 50, seed = "4")
  void anyPlaneComesBackBitForBit(
      @ForAll @IntRange(min = 1, max = 40) int width,
      @ForAll @IntRange(min = 1, max = 40) int height,
      @ForAll long seed)
      throws IOException {
    Path file = Files.createTempFile("plane", ".npy");
    try {
      Plane plane = plane(width, height, seed);
      NpyFile.write(file, plane);
      assertTrue(plane.sameBitsAs(NpyFile.read(file)));
    } finally {
      Files.delete(file);
    }
  }

  @Test
  void cutAtAnyByteTheFileIsRefused() throws IOException {
    Path file = temporary.resolve("plane.npy");
    NpyFile.write(file, plane(3, 2, 1));
    byte[] whole = Files.readAllBytes(file);
    for (int cut = 0; cut < whole.length; cut++) {
      Files.write(file, Arrays.copyOf(whole, cut));
      assertThrows(JournalException.class, () -> NpyFile.read(file));
    }
  }

  @Test
  void numpyReadsThePlane() throws Exception {
    Path file = temporary.resolve("plane.npy");
    Plane plane = new Plane(3, 2, new float[] {0.5f, -1.25f, Float.NaN, 3f, 4f, -0f});
    NpyFile.write(file, plane);
    String script =
        "import numpy,sys; a=numpy.load(sys.argv[1]); print(a.dtype.str, a.shape, a.tolist())";
    Process process;
    try {
      process =
          new ProcessBuilder("python3", "-c", script, file.toString())
              .redirectErrorStream(true)
              .start();
    } catch (IOException e) {
      assumeTrue(false, "python3 is not here");
      return;
    }
    String output =
        new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8).strip();
    assertTrue(process.waitFor(30, TimeUnit.SECONDS));
    assumeTrue(!output.contains("No module named"), "numpy is not here");
    assertEquals("<f4 (2, 3) [[0.5, -1.25, nan], [3.0, 4.0, -0.0]]", output);
  }
}
