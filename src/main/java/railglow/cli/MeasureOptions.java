package railglow.cli;

import java.nio.file.Path;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** How a rail is read by the supply itself. */
final class MeasureOptions {
  @Option(
      names = "--measure",
      paramLabel = "RAIL",
      description = {
        "read this rail with the bench's supply: a few gentle levels, leads taken off,",
        "output proven off before and after; needs --bench or --simulated"
      })
  String rail;

  @Option(
      names = "--reversed",
      description = "with --measure: the negative lead is on the rail; marks the reading so")
  boolean reversed;

  @Option(
      names = "--level",
      paramLabel = "VOLTS",
      converter = Quantities.Volts.class,
      description = "with --measure: the highest level (default: 600 mV, or what the rail allows)")
  Double levelVolts;

  @Option(
      names = "--current-limit",
      paramLabel = "AMPERES",
      converter = Quantities.Amperes.class,
      description = "with --measure: the current limit (default: 100 mA, or what is allowed)")
  Double limitAmperes;

  @Option(names = "--simulated", description = "with --measure: use the simulated bench")
  boolean simulated;

  @Mixin SimulatedBoardOptions board = new SimulatedBoardOptions();

  @Option(
      names = "--runs",
      paramLabel = "FOLDER",
      description = "with --measure: where its record is made, under readings/ (default: runs)")
  Path runs = Path.of("runs");
}
