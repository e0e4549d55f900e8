package railglow.sim.fault;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.nio.charset.StandardCharsets;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.provider.MethodSource;
import railglow.fuzz.Documented;
import railglow.sim.hand.HandMove;
import railglow.units.QuantityException;

/** Faults and moves of the hand for the simulated bench, as words. */
@Tag("fuzz")
public class FaultsFuzz {
  public static Stream<byte[]> seeds() {
    return Stream.of("runaway@12s", "late-reply=800ms@5s..7s", "touch:C9=20mohm@3s..9s")
        .map(text -> text.getBytes(StandardCharsets.UTF_8));
  }

  @MethodSource("seeds")
  @FuzzTest(maxDuration = "20s")
  void faults(byte[] bytes) {
    check(bytes);
  }

  public static void check(byte[] bytes) {
    String text = new String(bytes, StandardCharsets.UTF_8);
    Documented.only(
        () -> {
          FaultSpec fault = FaultSpec.parse(text);
          if (!FaultSpec.parse(fault.written()).equals(fault)) {
            throw new AssertionError("changes when written and read again: " + fault.written());
          }
        },
        QuantityException.class);
    Documented.only(() -> HandMove.parse(text), QuantityException.class);
  }
}
