package railglow.config;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.provider.MethodSource;
import railglow.fuzz.Documented;

/** Descriptors of cameras, and the frame they describe when they are accepted. */
@Tag("fuzz")
public class CameraDescriptorFuzz {
  public static Stream<byte[]> seeds() {
    return Documented.contents("instruments", "camera-*.yaml");
  }

  @MethodSource("seeds")
  @FuzzTest(maxDuration = "20s")
  void cameras(byte[] bytes) {
    check(bytes);
  }

  public static void check(byte[] bytes) {
    Path file = Documented.file("CameraDescriptorFuzz.yaml", bytes);
    Documented.only(() -> CameraDescriptorFile.read(file).profile(), ConfigException.class);
  }
}
