package railglow.cli;

import java.net.InetSocketAddress;
import railglow.sim.SimulatedBench;

/** The addresses of a simulated bench as a bench file writes them. */
final class SimulatedBenches {
  private SimulatedBenches() {}

  static String supplyAddress(SimulatedBench bench) {
    return address(bench.supplyAddress());
  }

  static String cameraAddress(SimulatedBench bench) {
    return address(bench.cameraAddress());
  }

  private static String address(InetSocketAddress socket) {
    return "tcp://" + socket.getAddress().getHostAddress() + ":" + socket.getPort();
  }
}
