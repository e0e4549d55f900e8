package railglow.sim;

import java.nio.file.Path;
import java.util.Optional;

/**
 * Where a simulated bench is to be reached.
 *
 * @param supplyPort TCP port on the loopback interface; 0 for any that is free
 * @param cameraPort likewise
 * @param terminal a device or a new pseudo-terminal on which the supply is served too
 */
public record BenchPorts(int supplyPort, int cameraPort, Optional<Path> terminal) {
  public static final BenchPorts ANY = new BenchPorts(0, 0, Optional.empty());

  public BenchPorts withTerminal(Path path) {
    return new BenchPorts(supplyPort, cameraPort, Optional.of(path));
  }
}
