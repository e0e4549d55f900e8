package railglow.config;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.provider.MethodSource;
import railglow.fuzz.Documented;

/** Bench files. */
@Tag("fuzz")
public class BenchFuzz {
  public static Stream<byte[]> seeds() {
    return Documented.contents("instruments", "bench-*.yaml");
  }

  @MethodSource("seeds")
  @FuzzTest(maxDuration = "20s")
  void benches(byte[] bytes) {
    check(bytes);
  }

  public static void check(byte[] bytes) {
    Path file = Documented.file("BenchFuzz.yaml", bytes);
    Documented.only(() -> BenchFile.read(file), ConfigException.class);
  }
}
