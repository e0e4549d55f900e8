package railglow.supply;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import railglow.link.PortLink;
import railglow.link.Transcript;
import railglow.sim.BenchScenario;
import railglow.sim.BenchWorld;
import railglow.sim.fault.FaultKind;
import railglow.sim.truth.TruthLog;
import railglow.sim.wire.SupplyServer;
import railglow.sim.wire.TerminalServer;
import railglow.time.MonotonicClock;
import railglow.time.Step;
import railglow.time.StepRunner;
import railglow.time.SystemClock;

/**
 * The simulated supply with its board behind a real socket or pseudo-terminal, without a camera. It
 * notes when each "off" arrived.
 */
final class WireBench implements AutoCloseable {
  static final MonotonicClock CLOCK = SystemClock.INSTANCE;
  private static final long TICK_NANOS = 5_000_000;
  final BenchWorld world;
  final List<Long> offNanos = new CopyOnWriteArrayList<>();
  private final SupplyServer server;
  private final TerminalServer terminal;
  private final Optional<Path> terminalPath;
  private final StepRunner ticker;

  WireBench(BenchScenario scenario, Optional<Path> terminalPath) throws IOException {
    this.terminalPath = terminalPath;
    world = new BenchWorld(scenario, CLOCK.nanos(), new TruthLog());
    double reply = scenario.supply().replySeconds();
    server = SupplyServer.start(0, this::receive, world.faults(), reply, CLOCK);
    terminal =
        terminalPath.isEmpty()
            ? null
            : TerminalServer.start(terminalPath.get(), this::receive, world.faults(), reply, CLOCK);
    Step tick =
        now -> {
          world.advance(now);
          if (world.faults().takeOnce(FaultKind.DROP_CONNECTION, now)) {
            server.dropClients();
          }
          return now + TICK_NANOS;
        };
    ticker = new StepRunner("wire-bench", tick, CLOCK, (name, e) -> {}).start();
  }

  private String receive(String line, long nowNanos) {
    if (line.contains("OUTP OFF")) {
      offNanos.add(nowNanos);
    }
    return world.receive(line, nowNanos);
  }

  SupplyAddress address() {
    return SupplyAddress.parse(
        terminalPath.map(path -> "serial:" + path).orElse("tcp://127.0.0.1:" + server.port()));
  }

  ScpiSupply connect(SupplyDescriptor descriptor) throws SupplyException {
    return ScpiSupply.connect(link(descriptor), descriptor, 1);
  }

  PortLink link(SupplyDescriptor descriptor) {
    return new PortLink(
        address().port(descriptor.line().orElse(LineManners.USUAL), CLOCK),
        descriptor.wire().link(),
        CLOCK,
        Transcript.NONE);
  }

  /** The truth. */
  boolean outputIsOn() {
    return world.supply().output(1).isReallyOn();
  }

  /** As if the cable were pulled. */
  void pullTerminal() {
    terminal.close();
  }

  @Override
  public void close() {
    ticker.close();
    server.close();
    if (terminal != null) {
      terminal.close();
    }
  }
}
