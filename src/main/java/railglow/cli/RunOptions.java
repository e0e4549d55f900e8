package railglow.cli;

import java.nio.file.Path;
import picocli.CommandLine.Option;

/** What a run is made of, as options; the same for every command that plans or makes one. */
final class RunOptions {
  @Option(
      names = "--simulated",
      description = "use the simulated bench with the HX-12 example board; it starts by itself")
  boolean simulated;

  @Option(
      names = "--bench",
      paramLabel = "FILE",
      description = "bench file: one supply, one camera, the leads and the limits of the place")
  String bench;

  @Option(
      names = "--board",
      paramLabel = "FILE",
      description =
          "board file (default: the one last used on this bench); without one there are no names for"
              + " what is hot")
  String board;

  @Option(
      names = "--without-board",
      description = "take no board file, not even the one last used on this bench")
  boolean withoutBoard;

  @Option(
      names = "--rail",
      paramLabel = "NAME",
      description = "the rail that is injected, as in the board file")
  String rail;

  @Option(
      names = "--sequence",
      paramLabel = "FILE",
      description = "sequence file or shipped sequence (default: ${DEFAULT-VALUE})")
  String sequence = "low-ohm-hunt";

  @Option(
      names = "--level",
      paramLabel = "VOLTS",
      converter = Quantities.Volts.class,
      description = "the level in the ON halves instead of the sequence's, e.g. \"1.5 V\"")
  Double levelVolts;

  @Option(
      names = "--current-limit",
      paramLabel = "AMPERES",
      converter = Quantities.Amperes.class,
      description = "the supply's current limit instead of the sequence's, e.g. \"300 mA\"")
  Double currentLimitAmperes;

  @Option(
      names = "--cycles-at-most",
      paramLabel = "N",
      description = "the cap of cycles instead of the sequence's")
  Integer cyclesAtMost;

  @Option(
      names = "--limit-voltage",
      paramLabel = "VOLTS",
      converter = Quantities.Volts.class,
      description = "a further limit: more than this is refused")
  Double limitVolts;

  @Option(
      names = "--limit-current",
      paramLabel = "AMPERES",
      converter = Quantities.Amperes.class,
      description = "a further limit: more than this is refused")
  Double limitAmperes;

  @Option(
      names = "--limit-power",
      paramLabel = "WATTS",
      converter = Quantities.Watts.class,
      description = "a further limit: more than this is refused")
  Double limitWatts;

  @Option(
      names = "--runs",
      paramLabel = "FOLDER",
      description = "where the run folder is made (default: runs)")
  Path runs = Path.of("runs");
}
