package railglow.config;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.provider.MethodSource;
import railglow.fuzz.Documented;

/** Board files, with the files they name absent. */
@Tag("fuzz")
public class BoardFuzz {
  public static Stream<byte[]> seeds() {
    return Documented.contents("docs/examples/hx12", "board.yaml");
  }

  @MethodSource("seeds")
  @FuzzTest(maxDuration = "20s")
  void boards(byte[] bytes) {
    check(bytes);
  }

  public static void check(byte[] bytes) {
    Path file = Documented.file("board.yaml", bytes);
    Documented.only(() -> BoardFile.read(file), ConfigException.class);
  }
}
