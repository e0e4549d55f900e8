package railglow.sim;

import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.file.Path;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import railglow.sim.fault.FaultKind;
import railglow.sim.fault.FaultSwitches;
import railglow.sim.truth.TruthLog;
import railglow.sim.wire.FrameClients;
import railglow.sim.wire.SupplyServer;
import railglow.sim.wire.TerminalServer;
import railglow.sim.wire.WireHabits;
import railglow.time.MonotonicClock;
import railglow.time.StepRunner;

/**
 * A simulated bench that is served: the supply on a TCP socket and perhaps a pseudo-terminal, the
 * camera on a TCP socket, in real time. Thread-safe. Close it to end all of it.
 */
public final class SimulatedBench implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(SimulatedBench.class);
  private final BenchWorld world;
  private final MonotonicClock clock;
  private final SupplyServer supply;
  private final FrameClients frames;
  private final TerminalServer terminal;
  private final StepRunner camera;

  private SimulatedBench(
      BenchWorld world,
      MonotonicClock clock,
      SupplyServer supply,
      FrameClients frames,
      TerminalServer terminal) {
    this.world = world;
    this.clock = clock;
    this.supply = supply;
    this.frames = frames;
    this.terminal = terminal;
    CameraFeed feed = new CameraFeed(world, frames::send, this::dropWhatIsDue);
    camera =
        new StepRunner(
            "sim-camera",
            feed,
            clock,
            (name, failure) -> LOG.error("the simulated camera failed", failure));
  }

  /**
   * Starts everything.
   *
   * @throws IOException with a sentence when a port is taken or a terminal can't be had
   */
  public static SimulatedBench start(BenchScenario scenario, BenchPorts ports, MonotonicClock clock)
      throws IOException {
    BenchWorld world = new BenchWorld(scenario, clock.nanos(), new TruthLog());
    WireHabits habits = scenario.supply().wire();
    SupplyServer supply = null;
    FrameClients frames = null;
    try {
      supply =
          SupplyServer.start(ports.supplyPort(), world::receive, world.faults(), habits, clock);
      frames = FrameClients.start(ports.cameraPort());
      TerminalServer terminal = null;
      if (ports.terminal().isPresent()) {
        terminal =
            TerminalServer.start(
                ports.terminal().get(), world::receive, world.faults(), habits, clock);
      }
      SimulatedBench bench = new SimulatedBench(world, clock, supply, frames, terminal);
      bench.camera.start();
      return bench;
    } catch (IOException e) {
      if (supply != null) {
        supply.close();
      }
      if (frames != null) {
        frames.close();
      }
      throw e;
    }
  }

  private void dropWhatIsDue() {
    if (world.faults().takeOnce(FaultKind.DROP_CONNECTION, clock.nanos())) {
      supply.dropClients();
    }
    if (world.faults().takeOnce(FaultKind.DROP_CAMERA, clock.nanos())) {
      frames.dropClients();
    }
  }

  public BenchScenario scenario() {
    return world.scenario();
  }

  public InetSocketAddress supplyAddress() {
    return new InetSocketAddress(InetAddress.getLoopbackAddress(), supply.port());
  }

  public InetSocketAddress cameraAddress() {
    return new InetSocketAddress(InetAddress.getLoopbackAddress(), frames.port());
  }

  /** Faults may be thrown and cleared at any time. */
  public FaultSwitches faults() {
    return world.faults();
  }

  public TruthLog truth() {
    return world.truth();
  }

  /** Writes the truth, from the start on, into a file as well. */
  public void writeTruth(Path path) throws IOException {
    world.truth().writeTo(path);
  }

  /** Notes in the truth whenever the true current passes this value upwards. */
  public void watchAmperes(double amperes) {
    world.watchAmperes(amperes);
  }

  /** Also sends all further frames to a stream, such as a process's standard output. */
  public void sendFramesTo(OutputStream stream) {
    frames.add(stream);
  }

  /** Now, on the bench's clock. */
  public long nanos() {
    return clock.nanos();
  }

  /** The terminal the supply is served on, if any. */
  public Optional<TerminalServer> terminal() {
    return Optional.ofNullable(terminal);
  }

  @Override
  public void close() {
    supply.close();
    if (terminal != null) {
      terminal.close();
    }
    camera.close();
    frames.close();
    try {
      world.truth().close();
    } catch (IOException e) {
      LOG.warn("the truth could not be written to its end: {}", e.toString());
    }
  }
}
