package railglow.cli;

import java.nio.file.Path;
import picocli.CommandLine.Option;

/** How the time alignment of a bench is asked for. */
final class AlignmentOptions {
  private static final int LEAST_PULSES = 12;

  @Option(
      names = "--align",
      description =
          "pulse a small resistor in the middle of the picture (10 ohm, some 2 mm long) for a minute"
              + " and a half and measure the camera's latency and time constant")
  boolean wanted;

  @Option(
      names = "--level",
      paramLabel = "VOLTS",
      converter = Quantities.Volts.class,
      description = "with --align: the resistor's voltage (default: \"1 V\")")
  private Double levelVolts;

  @Option(
      names = "--current-limit",
      paramLabel = "AMPERES",
      converter = Quantities.Amperes.class,
      description = "with --align: the supply's current limit (default: \"200 mA\")")
  private Double currentLimitAmperes;

  @Option(
      names = "--pulses",
      paramLabel = "N",
      description =
          "with --align: how many pulses, 12 or more; the first 4 only find the resistor (default:"
              + " 52)")
  private Integer pulses;

  /** The run that is to be made, without a board. */
  RunOptions asRun(Path benchFile, Path folder) throws UserMistake {
    if (pulses != null && pulses < LEAST_PULSES) {
      throw new UserMistake("--pulses is " + pulses + "; at least " + LEAST_PULSES + " are needed");
    }
    RunOptions options = new RunOptions();
    options.bench = benchFile.toString();
    options.sequence = "alignment";
    options.levelVolts = levelVolts;
    options.currentLimitAmperes = currentLimitAmperes;
    options.cyclesAtMost = pulses;
    options.runs = folder;
    return options;
  }
}
