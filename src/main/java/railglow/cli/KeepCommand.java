package railglow.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import railglow.casebook.KnownGoodLibrary;
import railglow.journal.JournalEnds;
import railglow.journal.RunFolder;

/** Keeps a run of a good board for later comparisons. */
@Command(
    name = "keep",
    mixinStandardHelpOptions = true,
    description = {
      "Keeps a run of a board known to be good, without its frames, in a library of plain files that"
          + " can be put under version control.",
      "",
      "Then: railglow compare KEPT RUN --as known-good"
    })
final class KeepCommand implements Callable<Integer> {
  private final Terminal terminal;

  @Parameters(index = "0", paramLabel = "RUN", description = "the run folder")
  private Path run;

  @Option(
      names = "--library",
      defaultValue = "known-good",
      description = "the library's folder (${DEFAULT-VALUE})")
  private Path library;

  @Option(
      names = "--readings",
      paramLabel = "TABLE",
      description = "keep this table of readings of the same board, too")
  private Path readings;

  KeepCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() throws Exception {
    RunFolder folder = RunFolderOf.existing(run);
    KnownGoodLibrary kept = new KnownGoodLibrary(library);
    terminal.say("Kept       " + kept.keep(folder).root());
    if (readings != null) {
      String board = JournalEnds.read(folder.journal()).header().board();
      terminal.say("Kept       " + kept.keepReadings(board, readings));
    }
    return ExitCode.DONE;
  }
}
