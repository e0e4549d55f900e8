package railglow.journal;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.provider.MethodSource;
import railglow.fuzz.Documented;

/** Files of findings. */
@Tag("fuzz")
public class FindingsFuzz {
  public static Stream<byte[]> seeds() {
    Path file = Documented.file("seed-findings.json", new byte[0]);
    try {
      FindingsFile.write(file, SampleRun.findings());
      return Stream.of(Files.readAllBytes(file));
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  @MethodSource("seeds")
  @FuzzTest(maxDuration = "20s")
  void findings(byte[] bytes) {
    check(bytes);
  }

  public static void check(byte[] bytes) {
    Path file = Documented.file("findings.json", bytes);
    Documented.only(() -> FindingsFile.read(file), JournalException.class);
  }
}
