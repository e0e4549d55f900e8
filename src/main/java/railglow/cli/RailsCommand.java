package railglow.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import railglow.board.Board;
import railglow.board.CaseVerdict;
import railglow.board.Rail;
import railglow.board.imports.ImportException;
import railglow.board.readings.InjectionMeans;
import railglow.board.readings.KnownGood;
import railglow.board.readings.LimitProposal;
import railglow.board.readings.RailJudgement;
import railglow.board.readings.RailReading;
import railglow.board.readings.RailsAssessment;
import railglow.board.readings.ReadingsReader;
import railglow.board.readings.ReadingsTable;
import railglow.config.Bench;
import railglow.config.BenchFile;
import railglow.config.BoardFile;
import railglow.time.SystemClock;
import railglow.time.WallStamp;

/** Readings in, which rail to hunt out. */
@Command(
    name = "rails",
    mixinStandardHelpOptions = true,
    description = {
      "Judges resistance readings to ground and says which rail to hunt first and how hard it may be"
          + " pushed. Opens nothing, unless --measure reads a rail with the supply.",
      "Example: railglow rails --board hx12 --leads \"0.2 ohm\" \"3V3=7.0 ohm\" \"1V8=130 ohm\""
    })
final class RailsCommand implements Callable<Integer> {
  private final Terminal terminal;

  @Parameters(
      paramLabel = "RAIL=OHMS",
      description = "readings, each like \"3V3=6.8 ohm\" or \"12V=open\"")
  private List<String> given = new ArrayList<>();

  @Option(
      names = "--board",
      paramLabel = "FILE",
      required = true,
      description = "board file with the rails and what is normal")
  private String boardName;

  @Option(
      names = "--readings",
      paramLabel = "FILE",
      description = "table of readings: rail,reading and optionally leads,level,polarity,error")
  private Path readingsFile;

  @Option(
      names = "--leads",
      paramLabel = "OHMS",
      converter = Quantities.Ohms.class,
      description = "resistance of the meter's leads, taken off the readings given here")
  private double leadOhms;

  @Option(
      names = "--known-good",
      paramLabel = "FILE",
      description =
          "table of readings of a board of the same type that works; counts more than the"
              + " board file")
  private Path knownGoodFile;

  @Option(
      names = "--bench",
      paramLabel = "FILE",
      description = "bench file, for its limits and leads in the proposal")
  private String benchName;

  @Option(
      names = "--clip-rating",
      paramLabel = "AMPERES",
      converter = Quantities.Amperes.class,
      description = "what the clip or connector may carry")
  private Double clipAmperes;

  @Option(
      names = "--lead-rating",
      paramLabel = "AMPERES",
      converter = Quantities.Amperes.class,
      description = "what the leads may carry")
  private Double leadAmperes;

  @Option(
      names = "--case",
      paramLabel = "FOLDER",
      description = "keep the readings in this case folder; a rail given again is corrected")
  private Path caseFolder;

  @Option(
      names = "--verdict",
      paramLabel = "VERDICT",
      description =
          "close the case: replace-part, remove-short, not-economic or no-fault-found; says whether"
              + " the readings confirm it")
  private String verdict;

  @Option(names = "--rail", paramLabel = "NAME", description = "the rail the verdict is about")
  private String verdictRail;

  @Option(names = "--part", paramLabel = "REF", description = "the part the verdict is about")
  private String verdictPart = "";

  @Option(
      names = "--evidence",
      paramLabel = "RUN",
      description = "a run folder the verdict rests on; may be given again")
  private List<Path> evidence = new ArrayList<>();

  @Mixin private MeasureOptions measure = new MeasureOptions();

  @Spec private CommandSpec spec;

  RailsCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() throws Exception {
    Board board = BoardFile.read(ShippedFiles.find(boardName, "examples", "board file")).board();
    List<RailReading> readings = readings();
    if (measure.rail != null) {
      RailMeasurement.Outcome outcome =
          new RailMeasurement(terminal, measure, boardName, benchName)
              .read(HuntCommand.commandLine(spec));
      if (outcome.measured() == null) {
        return outcome.exitCode();
      }
      readings = ReadingsTable.corrected(readings, outcome.measured().readings());
    }
    Optional<KnownGood> good =
        knownGoodFile == null
            ? Optional.empty()
            : Optional.of(KnownGood.of(CaseFolder.read(knownGoodFile)));
    RailsAssessment assessment = RailsAssessment.of(board, readings, good);
    terminal.say(RailsText.judgements(board, assessment));
    if (assessment.huntFirst().isPresent()) {
      Rail rail = board.rail(assessment.huntFirst().get()).orElseThrow();
      double ohms =
          assessment.judgements().stream()
              .filter(judgement -> judgement.rail().equals(rail.name()))
              .findFirst()
              .orElseThrow()
              .railOhms();
      terminal.say(
          RailsText.proposal(rail, LimitProposal.of(board, rail, ohms, means()), boardName));
    }
    keep(readings);
    if (verdict != null) {
      close(board, assessment);
    }
    return ExitCode.DONE;
  }

  private List<RailReading> readings() throws IOException, UserMistake {
    List<RailReading> readings = new ArrayList<>();
    if (caseFolder != null && Files.exists(caseReadings())) {
      readings.addAll(CaseFolder.read(caseReadings()));
    }
    if (readingsFile != null) {
      readings = new ArrayList<>(ReadingsTable.corrected(readings, CaseFolder.read(readingsFile)));
    }
    List<RailReading> typed = new ArrayList<>();
    for (String text : given) {
      try {
        typed.add(ReadingsReader.parse(text, leadOhms));
      } catch (ImportException e) {
        throw new UserMistake(e.getMessage());
      }
    }
    return ReadingsTable.corrected(readings, typed);
  }

  private InjectionMeans means() throws Exception {
    double leads = Double.POSITIVE_INFINITY;
    double clip = clipAmperes == null ? Double.POSITIVE_INFINITY : clipAmperes;
    if (leadAmperes != null) {
      leads = leadAmperes;
    }
    String bench = benchName == null && measure.simulated ? "bench-simulated" : benchName;
    if (bench == null) {
      return new InjectionMeans(
          Double.POSITIVE_INFINITY,
          Double.POSITIVE_INFINITY,
          Double.POSITIVE_INFINITY,
          0,
          leads,
          clip);
    }
    Bench found = BenchFile.read(ShippedFiles.find(bench, "instruments", "bench file"));
    return new InjectionMeans(
        found.limits().maxVolts().value(),
        found.limits().maxAmperes().value(),
        found.limits().maxWatts().value(),
        found.sensedAtBoard() ? 0 : found.leadOhms(),
        Math.min(leads, found.leadAmperes()),
        Math.min(clip, found.connectorAmperes()));
  }

  private Path caseReadings() {
    return caseFolder.resolve("readings.csv");
  }

  private void keep(List<RailReading> readings) throws UserMistake {
    if (caseFolder == null) {
      return;
    }
    try {
      new CaseFolder(caseFolder).keep(readings);
      terminal.say("Kept       " + caseReadings());
    } catch (IOException e) {
      throw new UserMistake("the readings can't be kept in " + caseFolder + ": " + e.getMessage());
    }
  }

  private void close(Board board, RailsAssessment assessment) throws UserMistake {
    if (caseFolder == null || verdictRail == null) {
      throw new UserMistake(
          "--verdict needs --case and --rail: which case, and which of its rails?");
    }
    for (Path run : evidence) {
      RunFolderOf.existing(run);
    }
    RailJudgement now =
        assessment.judgements().stream()
            .filter(judgement -> judgement.rail().equalsIgnoreCase(verdictRail))
            .findFirst()
            .orElseThrow(
                () -> new UserMistake(board.name() + " has no rail '" + verdictRail + "'"));
    try {
      CaseVerdict closed =
          CaseVerdict.of(
              kind(), now, verdictPart, board, evidence.stream().map(Path::toString).toList());
      Path file = caseFolder.resolve("verdict.yaml");
      Files.writeString(
          file, closed.yaml(WallStamp.now(SystemClock.INSTANCE).instant().toString()));
      List<String> lines = new ArrayList<>();
      Summary.wrap(lines, "Verdict    ", closed.statement());
      if (!verdictPart.isEmpty()) {
        RailsText.readToo(lines, board, List.of(verdictPart));
      }
      lines.add("Closed     " + file);
      terminal.say(lines);
    } catch (IllegalArgumentException e) {
      throw new UserMistake(e.getMessage());
    } catch (IOException e) {
      throw new UserMistake("the verdict can't be kept in " + caseFolder + ": " + e.getMessage());
    }
  }

  private CaseVerdict.Kind kind() throws UserMistake {
    for (CaseVerdict.Kind kind : CaseVerdict.Kind.values()) {
      if (kind.name().toLowerCase(Locale.ROOT).replace('_', '-').equals(verdict)) {
        return kind;
      }
    }
    throw new UserMistake(
        "--verdict is '"
            + verdict
            + "'; replace-part, remove-short, not-economic and no-fault-found are known");
  }
}
