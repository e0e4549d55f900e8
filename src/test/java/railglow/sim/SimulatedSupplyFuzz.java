package railglow.sim;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.nio.charset.StandardCharsets;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.provider.MethodSource;
import railglow.fuzz.Documented;
import railglow.link.BytePort;
import railglow.link.LinkException;
import railglow.link.MemoryPort;
import railglow.time.InventedClock;

/** Anything sent to the simulated supply. */
@Tag("fuzz")
public class SimulatedSupplyFuzz {
  private static final BenchScenario SCENARIO = BenchScenarios.hx12();

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

  private static void send(byte[] bytes) throws LinkException {
    InventedClock clock = new InventedClock(0);
    InventedBench bench = new InventedBench(SCENARIO, clock);
    MemoryPort port =
        new MemoryPort(clock, bench.connect(), new BytePort.Traits(true, false, false));
    port.open(1);
    port.write(bytes, 1);
    byte[] reply = new byte[4096];
    for (int i = 0; i < 100 && port.read(reply, 20_000_000) > 0; i++) {
      clock.advance(1_000_000);
    }
  }
}
