package railglow.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;
import railglow.board.Board;
import railglow.journal.Journal;
import railglow.journal.JournalReader;
import railglow.journal.RunFolder;
import railglow.report.Placement;
import railglow.report.RunReport;

/** Writes a run's report and pictures anew. */
@Command(
    name = "report",
    mixinStandardHelpOptions = true,
    description =
        "Writes report, pictures, planes and tables of a run folder anew, with whatever is in it; works"
            + " on a run that was cut off, too.")
final class ReportCommand implements Callable<Integer> {
  private final Terminal terminal;

  @Parameters(index = "0", paramLabel = "RUN", description = "the run folder")
  private Path run;

  ReportCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() throws Exception {
    RunFolder folder = RunFolderOf.existing(run);
    Journal journal = JournalReader.read(folder);
    Board board = RunFolderOf.board(folder, journal.header()).orElse(null);
    RunReport.write(folder, Placement.of(board, journal.header().rail()));
    if (!journal.finished()) {
      terminal.say("This run did not finish: " + journal.ending());
    }
    terminal.say("Report     " + folder.report());
    return ExitCode.DONE;
  }
}
