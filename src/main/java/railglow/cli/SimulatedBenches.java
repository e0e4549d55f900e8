package railglow.cli;

import java.net.InetSocketAddress;
import railglow.config.Bench;
import railglow.sim.SimulatedBench;

/** The addresses of a simulated bench as a bench file writes them, and benches that have them. */
final class SimulatedBenches {
  private SimulatedBenches() {}

  static String supplyAddress(SimulatedBench bench) {
    return address(bench.supplyAddress());
  }

  static String cameraAddress(SimulatedBench bench) {
    return address(bench.cameraAddress());
  }

  /** The bench with its supply and camera at those of a simulated one. */
  static Bench joined(Bench bench, SimulatedBench simulated) {
    return bench.withAddresses(supplyAddress(simulated), cameraAddress(simulated));
  }

  /** The same for all that a run needs. */
  static RunSetup joined(RunSetup setup, SimulatedBench simulated) {
    return setup.withBench(joined(setup.bench(), simulated));
  }

  private static String address(InetSocketAddress socket) {
    return "tcp://" + socket.getAddress().getHostAddress() + ":" + socket.getPort();
  }
}
