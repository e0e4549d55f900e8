package railglow.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.BufferedReader;
import java.io.DataInputStream;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.Socket;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import railglow.sim.fault.FaultKind;
import railglow.sim.fault.FaultSpec;
import railglow.sim.truth.TruthEvent;
import railglow.time.SystemClock;

@Timeout(20)
class SimulatedBenchTest {
  /** A controller of a few lines. */
  private static final class Client implements AutoCloseable {
    private final Socket socket;
    private final BufferedReader reader;

    Client(SimulatedBench bench) throws IOException {
      socket = new Socket();
      socket.connect(bench.supplyAddress());
      socket.setSoTimeout(5000);
      reader =
          new BufferedReader(
              new InputStreamReader(socket.getInputStream(), StandardCharsets.ISO_8859_1));
    }

    void send(String line) throws IOException {
      socket.getOutputStream().write((line + "\n").getBytes(StandardCharsets.ISO_8859_1));
    }

    String ask(String line) throws IOException {
      send(line);
      return reader.readLine();
    }

    @Override
    public void close() throws IOException {
      socket.close();
    }
  }

  private static SimulatedBench bench(FaultSpec... faults) throws IOException {
    return SimulatedBench.start(
        BenchScenarios.hx12().withFaults(List.of(faults)), BenchPorts.ANY, SystemClock.INSTANCE);
  }

  @Test
  void twoControllersShareOneOutput() throws IOException {
    try (SimulatedBench bench = bench();
        Client first = new Client(bench);
        Client second = new Client(bench)) {
      assertEquals("Railglow,SimulatedSupply,SIM0001,1.0", first.ask("*IDN?"));
      first.send("VOLT 1;CURR 0.5;OUTP ON");
      assertEquals("1", first.ask("OUTP?"));
      assertEquals("1", second.ask("OUTP?"));
      second.send("OUTP OFF");
      assertEquals("0", second.ask("OUTP?"));
      assertEquals("0", first.ask("OUTP?"));
    }
  }

  @Test
  void theTruthFileTellsWhenOffArrivedAndWhenCurrentCeased(@TempDir Path folder)
      throws IOException {
    Path file = folder.resolve("truth.jsonl");
    try (SimulatedBench bench = bench()) {
      bench.writeTruth(file);
      try (Client client = new Client(bench)) {
        client.send("VOLT 1;CURR 0.5;OUTP ON");
        client.ask("MEAS:CURR?");
        client.send("OUTP OFF");
        client.ask("OUTP?");
      }
      List<TruthEvent> outputs = bench.truth().events(TruthEvent.Kind.OUTPUT);
      assertEquals(2, outputs.size());
      assertEquals(true, outputs.get(0).facts().get("on"));
      assertEquals(false, outputs.get(1).facts().get("on"));
      TruthEvent off = bench.truth().last(TruthEvent.Kind.RECEIVED).orElseThrow();
      assertEquals("OUTP OFF", off.facts().get("line"));
      assertEquals(off.nanos(), outputs.get(1).nanos());
    }
    List<String> lines = Files.readAllLines(file);
    assertTrue(lines.get(0).contains("\"scenario\":\"hx12\""), lines.get(0));
    assertTrue(lines.stream().anyMatch(l -> l.contains("\"part\":\"C37\"")));
    assertTrue(lines.stream().anyMatch(l -> l.contains("\"line\":\"OUTP OFF\"")));
  }

  @Test
  void framesArriveWithCounterAndTime() throws IOException {
    try (SimulatedBench bench = bench();
        Socket camera = new Socket()) {
      camera.connect(bench.cameraAddress());
      DataInputStream in = new DataInputStream(camera.getInputStream());
      byte[] packet = new byte[16 + 2 * 256 * 192];
      in.readFully(packet);
      ByteBuffer first = ByteBuffer.wrap(packet).order(ByteOrder.LITTLE_ENDIAN);
      long counter = first.getInt(0) & 0xFFFFFFFFL;
      assertEquals(0, first.getInt(4));
      assertEquals(counter * 40_000, first.getLong(8), "25 Hz in microseconds");
      int count = first.getShort(16 + 2 * (100 * 256 + 100)) & 0xFFFF;
      assertEquals(23 + 273.15, count / 100.0, 3, "the board has the room's temperature");
      in.readFully(packet);
      assertTrue(ByteBuffer.wrap(packet).order(ByteOrder.LITTLE_ENDIAN).getInt(0) > counter);
    }
  }

  @Test
  void aDroppedConnectionCanBeOpenedAgain() throws IOException {
    try (SimulatedBench bench = bench();
        Client client = new Client(bench)) {
      assertEquals("0", client.ask("OUTP?"));
      bench.faults().throwAt(FaultKind.DROP_CONNECTION, bench.nanos());
      assertNull(client.reader.readLine());
      try (Client again = new Client(bench)) {
        assertEquals("0", again.ask("OUTP?"));
      }
    }
  }

  @Test
  void refusedConnectionsEndAtOnce() throws IOException {
    try (SimulatedBench bench = bench(FaultSpec.always(FaultKind.REFUSE_CONNECTION));
        Client client = new Client(bench)) {
      assertNull(client.reader.readLine());
    }
  }

  @Test
  void aPseudoTerminalServesTheSameSupply(@TempDir Path folder) throws IOException {
    assumeTrue(Files.isExecutable(Path.of("/usr/bin/socat")), "socat is not installed");
    Path path = folder.resolve("supply");
    try (SimulatedBench bench =
        SimulatedBench.start(
            BenchScenarios.hx12(), BenchPorts.ANY.withTerminal(path), SystemClock.INSTANCE)) {
      assertTrue(bench.terminal().isPresent());
      for (int i = 0; i < 2; i++) {
        try (var out = Files.newOutputStream(path);
            var reader = new BufferedReader(Files.newBufferedReader(path))) {
          out.write("*IDN?\n".getBytes(StandardCharsets.ISO_8859_1));
          out.flush();
          assertEquals(
              "Railglow,SimulatedSupply,SIM0001,1.0",
              reader.readLine(),
              "at opening number " + (i + 1));
        }
      }
    }
  }
}
