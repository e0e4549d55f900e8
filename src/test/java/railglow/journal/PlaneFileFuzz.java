package railglow.journal;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.provider.MethodSource;
import railglow.fuzz.Documented;
import railglow.thermal.Plane;

/** Planes of a run folder. */
@Tag("fuzz")
public class PlaneFileFuzz {
  public static Stream<byte[]> seeds() {
    Path file = Documented.file("seed-plane.npy", new byte[0]);
    try {
      NpyFile.write(file, new Plane(3, 2));
      return Stream.of(Files.readAllBytes(file));
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  @MethodSource("seeds")
  @FuzzTest(maxDuration = "20s")
  void planes(byte[] bytes) {
    check(bytes);
  }

  public static void check(byte[] bytes) {
    Path file = Documented.file("plane.npy", bytes);
    Documented.only(() -> NpyFile.read(file), JournalException.class);
  }
}
