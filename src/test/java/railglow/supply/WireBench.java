package railglow.supply;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
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
import railglow.sim.wire.WireHabits;
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
  private final String scheme;
  private final int[] timesOn;
  private final boolean[] wasOn;
  private final StepRunner ticker;

  WireBench(BenchScenario scenario, Optional<Path> terminalPath, String scheme) throws IOException {
    this.terminalPath = terminalPath;
    this.scheme = scheme;
    this.timesOn = new int[scenario.supply().channels()];
    this.wasOn = new boolean[scenario.supply().channels()];
    world = new BenchWorld(scenario, CLOCK.nanos(), new TruthLog());
    WireHabits habits = scenario.supply().wire();
    server = SupplyServer.start(0, this::receive, world.faults(), habits, CLOCK);
    terminal =
        terminalPath.isEmpty()
            ? null
            : TerminalServer.start(
                terminalPath.get(), this::receive, world.faults(), habits, CLOCK);
    Step tick =
        now -> {
          world.advance(now);
          countOn();
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
        terminalPath.map(path -> scheme + path).orElse("tcp://127.0.0.1:" + server.port()));
  }

  ScpiSupply connect(SupplyDescriptor descriptor, int channel) throws SupplyException {
    return ScpiSupply.connect(link(descriptor), descriptor, channel);
  }

  PortLink link(SupplyDescriptor descriptor) {
    return new PortLink(
        address().port(descriptor.line().orElse(LineManners.USUAL), CLOCK),
        descriptor.wire().link(),
        CLOCK,
        Transcript.NONE);
  }

  /** The truth: whether any output is on. */
  boolean outputIsOn() {
    boolean on = false;
    for (int channel = 1; channel <= timesOn.length; channel++) {
      on |= world.supply().output(channel).isReallyOn();
    }
    return on;
  }

  private synchronized void countOn() {
    for (int i = 0; i < timesOn.length; i++) {
      boolean on = world.supply().output(i + 1).isReallyOn();
      timesOn[i] += on && !wasOn[i] ? 1 : 0;
      wasOn[i] = on;
    }
  }

  /** How often each channel was seen to go on. */
  synchronized List<Integer> timesOn() {
    return Arrays.stream(timesOn).boxed().toList();
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
