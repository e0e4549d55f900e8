package railglow.sim.wire;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.nio.charset.StandardCharsets;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.provider.MethodSource;
import railglow.fuzz.Documented;

/** Anything sent to the simulated supply. */
@Tag("fuzz")
public class SimulatedSupplyFuzz {
  public static Stream<byte[]> seeds() {
    return Stream.of(
            "*IDN?\nVOLT 1.2;CURR 0.5\nOUTP ON\nMEAS:VOLT?;:MEAS:CURR?\nSYST:ERR?\n",
            "*ESE 60;*ESE?;*STB?\n*RST;*CLS\nSTAT:QUES:COND?\nVOLT:PROT 3;PROT?\n")
        .map(text -> text.getBytes(StandardCharsets.ISO_8859_1));
  }

  @MethodSource("seeds")
  @FuzzTest(maxDuration = "20s")
  void lines(byte[] bytes) {
    check(bytes);
  }

  public static void check(byte[] bytes) {
    Documented.only(() -> send(bytes));
  }

  private static void send(byte[] bytes) {
    SupplyBesideLoad bench = new SupplyBesideLoad(6.8);
    String[] lines = new String(bytes, StandardCharsets.ISO_8859_1).split("\n", 20);
    for (String line : lines) {
      bench.send(line);
    }
    // whatever came before, it still knows who it is
    bench.send("*CLS");
    String identity = bench.send("*IDN?");
    if (identity == null || identity.split(",").length < 4) {
      throw new AssertionError("identity after these lines: " + identity);
    }
  }
}
