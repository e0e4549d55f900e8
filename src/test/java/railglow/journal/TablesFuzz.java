package railglow.journal;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.provider.MethodSource;
import railglow.fuzz.Documented;

/** Tables of edges and of frame times that come with recorded frames. */
@Tag("fuzz")
public class TablesFuzz {
  public static Stream<byte[]> seeds() {
    return Stream.of("time_s,state\n0,OFF\n2.5,ON\n5,OFF\n", "frame,t_ms\n0,0.0\n1,40\n2,80.5\n")
        .map(text -> text.getBytes(StandardCharsets.UTF_8));
  }

  @MethodSource("seeds")
  @FuzzTest(maxDuration = "20s")
  void tables(byte[] bytes) {
    check(bytes);
  }

  public static void check(byte[] bytes) {
    Path file = Documented.file("table.csv", bytes);
    Documented.only(() -> EdgeTable.read(file), JournalException.class);
    Documented.only(() -> FrameTable.readNanos(file), JournalException.class);
  }
}
