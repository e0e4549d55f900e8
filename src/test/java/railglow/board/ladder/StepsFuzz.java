package railglow.board.ladder;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.nio.charset.StandardCharsets;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.provider.MethodSource;
import railglow.fuzz.Documented;

/** Tables of the steps of a ladder. */
@Tag("fuzz")
public class StepsFuzz {
  public static Stream<byte[]> seeds() {
    return Stream.of(
            "voltage,current,voltage-error,current-error\n0.1 V,10 mA,1 mV,1 mA\n0.2 V,20 mA,,\n")
        .map(text -> text.getBytes(StandardCharsets.UTF_8));
  }

  @MethodSource("seeds")
  @FuzzTest(maxDuration = "20s")
  void steps(byte[] bytes) {
    check(bytes);
  }

  public static void check(byte[] bytes) {
    Documented.only(() -> StepsReader.read("steps.csv", bytes), LadderException.class);
  }
}
