package railglow.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import railglow.link.LinkException;
import railglow.link.LinkLostException;
import railglow.link.MemoryPort;
import railglow.sim.fault.FaultSpec;
import railglow.time.InventedClock;

class InventedBenchTest {
  private static final long SECOND = 1_000_000_000L;
  private final InventedClock clock = new InventedClock(5 * SECOND);

  private MemoryPort port(String... faults) throws LinkException {
    List<FaultSpec> specs = java.util.Arrays.stream(faults).map(FaultSpec::parse).toList();
    InventedBench bench = new InventedBench(BenchScenarios.hx12().withFaults(specs), clock);
    MemoryPort port = new MemoryPort(clock, bench.connect());
    port.open(SECOND);
    return port;
  }

  private static String ask(MemoryPort port, String text) throws LinkException {
    port.write(text.getBytes(StandardCharsets.ISO_8859_1), SECOND);
    StringBuilder reply = new StringBuilder();
    byte[] buffer = new byte[256];
    for (int n = port.read(buffer, SECOND); n > 0; n = port.read(buffer, SECOND)) {
      reply.append(new String(buffer, 0, n, StandardCharsets.ISO_8859_1));
      if (reply.charAt(reply.length() - 1) == '\n') {
        break;
      }
    }
    return reply.toString();
  }

  @Test
  void aLineInPiecesIsAnsweredAfterTheReplyTime() throws LinkException {
    MemoryPort port = port();
    port.write("*ID".getBytes(StandardCharsets.ISO_8859_1), SECOND);
    assertEquals("Railglow,SimulatedSupply,SIM0001,1.0\n", ask(port, "N?\r\n"));
    assertEquals(5 * SECOND + 2_000_000, clock.nanos());
  }

  @Test
  void bytesCanComeOneAtATime() throws LinkException {
    MemoryPort port = port("byte-at-a-time=10ms");
    assertEquals("0\n", ask(port, "OUTP?\n"));
    assertEquals(5 * SECOND + 12_000_000, clock.nanos());
  }

  @Test
  void theConnectionCanEnd() throws LinkException {
    MemoryPort port = port("drop-connection@1s");
    assertEquals("0\n", ask(port, "OUTP?\n"));
    clock.advance(SECOND);
    assertThrows(LinkLostException.class, () -> ask(port, "OUTP?\n"));
    port.open(SECOND);
    assertEquals("0\n", ask(port, "OUTP?\n"));
  }

  @Test
  void packetsComeWhenTheyAreDueAndNeverBefore() {
    InventedBench bench = new InventedBench(BenchScenarios.hx12(), clock);
    assertEquals(null, bench.takePacket());
    clock.advanceTo(bench.nextPacketNanos());
    // 16 bytes of header and 256 x 192 counts of two bytes.
    assertEquals(16 + 2 * 256 * 192, bench.takePacket().length);
    assertEquals(5 * SECOND + 40_000_000, clock.nanos(), "latency of the first frame");
    assertTrue(bench.nextPacketNanos() >= clock.nanos() + 40_000_000);
  }
}
