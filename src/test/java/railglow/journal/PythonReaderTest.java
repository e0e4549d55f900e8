package railglow.journal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The frames as docs/tools/read_frames.py reads them, written after the docs and not after us. */
class PythonReaderTest {
  @TempDir Path temporary;

  @ParameterizedTest
  @ValueSource(strings = {"frames.rgf", "frames-raw.rgf", "frames-float.rgf"})
  void readsTheGoldenFramesBitForBit(String name) throws Exception {
    Path npy = temporary.resolve("out.npy");
    Process process;
    try {
      process =
          new ProcessBuilder(
                  "python3",
                  "docs/tools/read_frames.py",
                  "src/test/resources/golden/format-1/" + name,
                  npy.toString())
              .redirectErrorStream(true)
              .start();
    } catch (IOException e) {
      assumeTrue(false, "python3 is not here");
      return;
    }
    String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertTrue(process.waitFor(60, TimeUnit.SECONDS));
    assumeTrue(!output.contains("No module named"), "numpy is not here");
    assertEquals(0, process.exitValue(), output);
    ByteBuffer bytes = ByteBuffer.wrap(Files.readAllBytes(npy)).order(ByteOrder.LITTLE_ENDIAN);
    bytes.position(10 + bytes.getShort(8));
    for (int frame = 0; frame < 70; frame++) {
      for (int pixel = 0; pixel < 32 * 24; pixel++) {
        int count = GoldenRunTest.count(frame, pixel);
        if (name.equals("frames-float.rgf")) {
          assertEquals(count * 0.01f - 273.15f, bytes.getFloat());
        } else {
          assertEquals(count, bytes.getShort() & 0xFFFF);
        }
      }
    }
    assertEquals(0, bytes.remaining());
  }
}
