package railglow.cli;

import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Option;
import railglow.sim.BenchScenario;

/** Which board the simulated bench has and what goes wrong there. */
final class SimulatedBoardOptions {
  @Option(
      names = "--scenario",
      paramLabel = "NAME",
      description = "with --simulated: which simulated board (default: hx12)")
  private String name = "hx12";

  @Option(
      names = "--fault",
      paramLabel = "FAULT",
      description = "with --simulated: a fault of the bench and when it comes, e.g. runaway@12s")
  private List<String> faults = new ArrayList<>();

  /**
   * The board with its faults.
   *
   * @throws UserMistake naming what there is no such thing as
   */
  BenchScenario scenario() throws UserMistake {
    return SimulateCommand.scenario(name, faults);
  }
}
