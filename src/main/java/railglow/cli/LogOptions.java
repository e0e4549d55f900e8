package railglow.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Option;

/** What a log is made of, as options. */
final class LogOptions {
  @Option(
      names = "--simulated",
      description = "use the simulated bench with the HX-12 example board; it starts by itself")
  boolean simulated;

  @Option(names = "--bench", paramLabel = "FILE", description = "bench file")
  String bench;

  @Option(
      names = "--board",
      paramLabel = "FILE",
      description = "board file; its 'places' are followed, and its parts can be")
  String board;

  @Option(
      names = "--without-board",
      description = "take no board file, not even the one last used on this bench")
  boolean withoutBoard;

  @Option(names = "--rail", paramLabel = "NAME", description = "the rail that is injected or read")
  String rail;

  @Option(
      names = "--level",
      paramLabel = "VOLTS",
      converter = Quantities.Volts.class,
      description =
          "inject steadily at this level; needs --current-limit. All limits of a run hold")
  Double levelVolts;

  @Option(
      names = "--current-limit",
      paramLabel = "AMPERES",
      converter = Quantities.Amperes.class,
      description = "the supply's current limit for the injection")
  Double currentLimitAmperes;

  @Option(
      names = "--watch-supply",
      description =
          "read the bench's supply but never change it: somebody else controls it. Without this and"
              + " without --level only the camera is used")
  boolean watchSupply;

  @Option(
      names = "--duration",
      paramLabel = "SECONDS",
      converter = Quantities.Seconds.class,
      description =
          "how long, after the lead-in or the start condition (default: until stopped; an injection"
              + " at most \"600 s\")")
  Double durationSeconds;

  @Option(
      names = "--lead-in",
      paramLabel = "SECONDS",
      converter = Quantities.Seconds.class,
      description = "before any injection, the baseline of every rise (default: \"2 s\")")
  double leadInSeconds = 2;

  @Option(
      names = "--start-on",
      paramLabel = "CONDITION",
      description =
          "keep frames only from this on: 'current step 50 mA', 'power above 1 W', 'hottest above 45"
              + " degC', 'rise above 2 K'")
  String startOn;

  @Option(
      names = "--before",
      paramLabel = "SECONDS",
      converter = Quantities.Seconds.class,
      description = "with --start-on: frames kept from before it (default: \"1 s\")")
  double beforeSeconds = 1;

  @Option(
      names = "--wait",
      paramLabel = "SECONDS",
      converter = Quantities.Seconds.class,
      description =
          "with --start-on: how long it is waited for (default: until stopped; while injecting"
              + " \"600 s\")")
  Double waitSeconds;

  @Option(
      names = "--stop-on",
      paramLabel = "CONDITION",
      description = "end the log on this; also 'PLACE above 60 degC' and 'PLACE rise above 5 K'")
  String stopOn;

  @Option(
      names = "--mark-on",
      paramLabel = "CONDITION",
      description = "set a mark whenever this becomes true; may be given again")
  List<String> markOn = new ArrayList<>();

  @Option(
      names = "--place",
      paramLabel = "PLACE",
      description =
          "follow a part ('C37'), or 'NAME=point X, Y', 'NAME=line X, Y, X, Y', 'NAME=area X, Y, X,"
              + " Y' in px (column, row of the picture) or mm (on the board); may be given again")
  List<String> places = new ArrayList<>();

  @Option(
      names = "--limit-voltage",
      paramLabel = "VOLTS",
      converter = Quantities.Volts.class,
      description = "a further limit of the injection: more than this is refused")
  Double limitVolts;

  @Option(
      names = "--limit-current",
      paramLabel = "AMPERES",
      converter = Quantities.Amperes.class,
      description = "likewise")
  Double limitAmperes;

  @Option(
      names = "--limit-power",
      paramLabel = "WATTS",
      converter = Quantities.Watts.class,
      description = "likewise")
  Double limitWatts;

  @Option(
      names = "--runs",
      paramLabel = "FOLDER",
      description = "where the run folder is made (default: runs)")
  Path runs = Path.of("runs");

  /** The same for what reads and checks a bench, a board and an injection. */
  RunOptions forSetup() {
    RunOptions options = new RunOptions();
    options.simulated = simulated;
    options.bench = bench;
    options.board = board;
    options.withoutBoard = withoutBoard;
    options.rail = rail;
    options.levelVolts = levelVolts;
    options.currentLimitAmperes = currentLimitAmperes;
    options.limitVolts = limitVolts;
    options.limitAmperes = limitAmperes;
    options.limitWatts = limitWatts;
    options.runs = runs;
    return options;
  }
}
