package railglow.board.imports;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.provider.MethodSource;
import railglow.fuzz.Documented;

/** IPC-D-356A netlists. */
@Tag("fuzz")
public class NetlistFuzz {
  public static Stream<byte[]> seeds() {
    return Documented.contents("docs/examples/hx12", "netlist.ipc")
        .map(text -> Documented.firstLines(text, 12));
  }

  @MethodSource("seeds")
  @FuzzTest(maxDuration = "20s")
  void netlists(byte[] bytes) {
    check(bytes);
  }

  public static void check(byte[] bytes) {
    Documented.only(() -> NetlistReader.read("netlist.ipc", bytes), NetlistException.class);
  }
}
