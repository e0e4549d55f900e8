package railglow.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
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

  @Option(
      names = "--at",
      paramLabel = "TIME",
      description = "for a log: also show the frame at this time after the start, '12.5 s'")
  private List<String> at = new ArrayList<>();

  @Mixin private LanguageOption language = new LanguageOption();

  ReportCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() throws Exception {
    RunFolder folder = RunFolderOf.existing(run);
    Journal journal = JournalReader.read(folder);
    Board board = RunFolderOf.board(folder, journal.header()).orElse(null);
    double[] seconds = new double[at.size()];
    for (int i = 0; i < seconds.length; i++) {
      seconds[i] = FrameChoice.seconds(at.get(i));
    }
    if (seconds.length > 0 && !journal.header().isLog()) {
      throw new UserMistake("--at is for logs; 'export --frame' opens any frame of any run");
    }
    RunReport.write(
        folder, Placement.of(board, journal.header().rail()), language.locale(), seconds);
    if (!journal.finished()) {
      terminal.say("This run did not finish: " + journal.ending());
    }
    terminal.say("Report     " + folder.report());
    return ExitCode.DONE;
  }
}
