package railglow.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import railglow.board.Board;
import railglow.casebook.RunArchive;
import railglow.journal.FindingsFile;
import railglow.journal.Journal;
import railglow.journal.JournalReader;
import railglow.journal.RunFolder;
import railglow.report.OhmReading;
import railglow.report.Paper;
import railglow.report.Placement;
import railglow.report.RunReport;
import railglow.units.Quantity;
import railglow.units.QuantityException;
import railglow.units.Unit;

/** Hands a run on. */
@Command(
    name = "export",
    mixinStandardHelpOptions = true,
    description = {
      "Hands a run on: writes the owner's page and the technical report as PDF into the run folder,"
          + " then the whole folder as a zip file with checksums over everything in it.",
      "",
      "Planes are NPY and float TIFF, pictures PNG, the trace CSV, the record JSON."
    })
final class ExportCommand implements Callable<Integer> {
  private final Terminal terminal;

  @Parameters(index = "0", paramLabel = "RUN", description = "the run folder")
  private Path run;

  @Option(names = "--to", paramLabel = "ZIP", description = "the zip file (RUN.zip beside the run)")
  private Path zip;

  @Option(names = "--paper", defaultValue = "A4", description = "A4 or LETTER (${DEFAULT-VALUE})")
  private Paper paper;

  @Option(
      names = "--without-frames",
      description = "leave the frames out: smaller, but the run can't be replayed from it")
  private boolean withoutFrames;

  @Option(names = "--pdf-only", description = "write the PDFs alone, no zip file")
  private boolean pdfOnly;

  @Option(
      names = "--after",
      paramLabel = "OHMS",
      description = "what the rail reads after the repair, for example '47 ohm'")
  private String after;

  @Option(
      names = "--frame",
      paramLabel = "WHICH",
      description =
          "write this frame as NPY, TIFF and PNG, nothing else: a time after the start ('12.5 s'), a"
              + " frame's number ('#310') or a mark of a log ('mark 2'); may be given again")
  private List<String> frames = new ArrayList<>();

  @Option(
      names = "--place",
      paramLabel = "PLACE",
      description =
          "follow this place through the recorded frames and write places-added.csv, nothing else;"
              + " as for 'log'; may be given again")
  private List<String> places = new ArrayList<>();

  @Option(
      names = "--case",
      paramLabel = "FOLDER",
      description =
          "the board's case: its readings before and after, and its verdict, come into the owner's"
              + " report")
  private Path caseFolder;

  @Mixin private LanguageOption language = new LanguageOption();

  ExportCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() throws Exception {
    RunFolder folder = RunFolderOf.existing(run);
    double afterOhms = afterOhms();
    Journal journal = JournalReader.read(folder);
    Board board = RunFolderOf.board(folder, journal.header()).orElse(null);
    Placement placement = Placement.of(board, journal.header().rail());
    if (!frames.isEmpty() || !places.isEmpty()) {
      FrameChoice.export(terminal, folder, journal, placement, frames);
      FrameChoice.follow(terminal, folder, journal, board, places);
      return ExitCode.DONE;
    }
    RunReport.write(folder, placement).forEach(terminal::complain);
    RunReport.writePdf(
        folder,
        placement,
        new RunReport.Print(
            paper,
            language.locale(),
            readings(folder, journal, board, afterOhms),
            caseFolder == null ? "" : new CaseFolder(caseFolder).verdict().orElse("")));
    if (!journal.header().isLog()) {
      terminal.say("Owner      " + folder.root().resolve("owner.pdf"));
    }
    terminal.say("Report     " + folder.root().resolve("report.pdf"));
    if (!pdfOnly) {
      Path target =
          zip != null ? zip : folder.root().toAbsolutePath().resolveSibling(folder.name() + ".zip");
      int files = RunArchive.write(folder, target, !withoutFrames);
      terminal.say(
          "Archive    "
              + target
              + ", "
              + files
              + " files, "
              + (Files.size(target) + (1 << 20) - 1 >> 20)
              + " MB");
    }
    return ExitCode.DONE;
  }

  private double afterOhms() throws UserMistake {
    try {
      return after == null ? Double.NaN : Quantity.parse(after, Unit.OHM);
    } catch (QuantityException e) {
      throw new UserMistake("--after: " + e.getMessage());
    }
  }

  private List<OhmReading> readings(
      RunFolder folder, Journal journal, Board board, double afterOhms) throws Exception {
    String rail = journal.header().rail();
    if (caseFolder != null) {
      if (after != null) {
        throw new UserMistake("--after and --case contradict each other: the case has the reading");
      }
      return new CaseFolder(caseFolder).beforeAndAfter(board, rail);
    }
    double before =
        Files.exists(folder.findings())
            ? FindingsFile.read(folder.findings()).railOhms()
            : Double.NaN;
    if (rail.isEmpty() || Double.isNaN(before) && Double.isNaN(afterOhms)) {
      return List.of();
    }
    return List.of(new OhmReading(rail, before, CaseFolder.normal(board, rail), afterOhms));
  }
}
