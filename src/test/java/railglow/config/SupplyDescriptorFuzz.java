package railglow.config;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.provider.MethodSource;
import railglow.fuzz.Documented;

/** Descriptors of supplies. */
@Tag("fuzz")
public class SupplyDescriptorFuzz {
  public static Stream<byte[]> seeds() {
    return Documented.contents("instruments", "supply-*.yaml");
  }

  @MethodSource("seeds")
  @FuzzTest(maxDuration = "20s")
  void supplies(byte[] bytes) {
    check(bytes);
  }

  public static void check(byte[] bytes) {
    Path file = Documented.file("SupplyDescriptorFuzz.yaml", bytes);
    Documented.only(() -> SupplyDescriptorFile.read(file), ConfigException.class);
  }
}
