package railglow.supply;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import railglow.sim.BenchScenarios;
import railglow.sim.BenchWorld;
import railglow.sim.fault.FaultKind;
import railglow.sim.truth.TruthEvent;
import railglow.sim.truth.TruthLog;
import railglow.sim.wire.SupplyServer;
import railglow.sim.wire.TerminalServer;
import railglow.sim.wire.WireHabits;
import railglow.time.MonotonicClock;
import railglow.time.SystemClock;

/**
 * The other end of the stop latency measurement, in a process of its own: the simulated supply,
 * which knows when its current truly passed the limit and when "off" arrived, and a bare echo on a
 * second socket. Both processes read the machine's one monotonic clock.
 */
final class StopLatencySupply {
  static final double LIMIT_AMPERES = 0.3;
  private static final MonotonicClock CLOCK = SystemClock.INSTANCE;
  private final BenchWorld world =
      new BenchWorld(BenchScenarios.hx12(), CLOCK.nanos(), new TruthLog());
  private long armedNanos = Long.MAX_VALUE;
  private long aboveNanos;
  private long askedNanos;
  private boolean watchesOff;

  private StopLatencySupply() {
    world.watchAmperes(LIMIT_AMPERES);
  }

  /**
   * @param args nothing for TCP, or the path of the pseudo-terminal to make
   */
  public static void main(String[] args) throws IOException {
    StopLatencySupply supply = new StopLatencySupply();
    WireHabits habits = BenchScenarios.hx12().supply().wire();
    SupplyServer server =
        SupplyServer.start(0, supply::receive, supply.world.faults(), habits, CLOCK);
    if (args.length > 0) {
      TerminalServer.start(Path.of(args[0]), supply::receive, supply.world.faults(), habits, CLOCK);
    }
    ServerSocket echo = new ServerSocket(0, 1, InetAddress.getLoopbackAddress());
    Thread echoing = new Thread(() -> serve(echo), "echo");
    echoing.setDaemon(true);
    echoing.start();
    System.out.println("ports " + server.port() + " " + echo.getLocalPort());
    BufferedReader in =
        new BufferedReader(new InputStreamReader(System.in, StandardCharsets.US_ASCII));
    for (String line = in.readLine(); line != null; line = in.readLine()) {
      supply.obey(line);
    }
    System.exit(0);
  }

  private synchronized void obey(String line) {
    if (line.equals("watch")) {
      watchesOff = true;
      System.out.println("watching");
    } else if (line.equals("clear")) {
      world.faults().clear(FaultKind.RUNAWAY);
      armedNanos = Long.MAX_VALUE;
      System.out.println("cleared");
    } else {
      armedNanos = CLOCK.nanos();
      aboveNanos = 0;
      askedNanos = 0;
      world.faults().throwAt(FaultKind.RUNAWAY, armedNanos + Long.parseLong(line));
    }
  }

  private synchronized String receive(String line, long nowNanos) {
    String answer = world.receive(line, nowNanos);
    if (watchesOff && line.contains("OUTP OFF")) {
      watchesOff = false;
      System.out.println("off " + nowNanos);
    }
    if (aboveNanos == 0 && armedNanos != Long.MAX_VALUE) {
      aboveNanos =
          world
              .truth()
              .last(TruthEvent.Kind.CURRENT_ABOVE)
              .map(TruthEvent::nanos)
              .filter(nanos -> nanos > armedNanos)
              .orElse(0L);
    }
    if (aboveNanos != 0 && askedNanos == 0 && line.contains("MEAS")) {
      askedNanos = nowNanos;
    }
    if (aboveNanos != 0 && askedNanos != 0 && line.contains("OUTP OFF")) {
      System.out.println("trip " + aboveNanos + " " + askedNanos + " " + nowNanos);
      armedNanos = Long.MAX_VALUE;
      aboveNanos = 0;
    }
    return answer;
  }

  private static void serve(ServerSocket echo) {
    byte[] buffer = new byte[64];
    try (Socket client = echo.accept()) {
      client.setTcpNoDelay(true);
      InputStream in = client.getInputStream();
      OutputStream out = client.getOutputStream();
      for (int count = in.read(buffer); count >= 0; count = in.read(buffer)) {
        out.write(buffer, 0, count);
      }
    } catch (IOException e) {
      System.out.println("echo ended: " + e.getMessage());
    }
  }
}
