package railglow.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import railglow.casebook.Catalogue;
import railglow.casebook.CatalogueException;
import railglow.casebook.FaultCount;
import railglow.casebook.Retention;
import railglow.casebook.RunFolders;
import railglow.casebook.RunSearch;
import railglow.casebook.RunSummary;
import railglow.journal.Checksums;
import railglow.journal.Damage;
import railglow.journal.JournalException;
import railglow.journal.RunFolder;

/** Finds runs again. */
@Command(
    name = "runs",
    mixinStandardHelpOptions = true,
    description = {
      "Lists runs, newest first: all, or those that fit every option. The catalogue is kept up to"
          + " date from the run folders and can be rebuilt from them at any time.",
      "",
      "Exit codes: 0 done; 1 --check found something that was changed."
    })
final class RunsCommand implements Callable<Integer> {
  private final Terminal terminal;

  @Parameters(arity = "0..*", paramLabel = "WORD", description = "words that must all be there")
  private List<String> words = List.of();

  @Option(
      names = "--runs",
      defaultValue = "runs",
      description = "where runs are kept (${DEFAULT-VALUE})")
  private Path runs;

  @Option(names = "--board", defaultValue = "", description = "a part of the board's name")
  private String board;

  @Option(names = "--rail", defaultValue = "", description = "the rail")
  private String rail;

  @Option(names = "--part", defaultValue = "", description = "a suspect, for example C37")
  private String part;

  @Option(
      names = "--verdict",
      defaultValue = "",
      description = "HEAT_FOUND, NOTHING_FOUND, NOT_ENOUGH_DATA, NO_FINDINGS, LOG or LADDER")
  private String verdict;

  @Option(names = "--from", description = "started on this day or later, for example 2026-03-01")
  private LocalDate from;

  @Option(names = "--until", description = "started on this day or earlier")
  private LocalDate until;

  @Option(names = "--most", defaultValue = "20", description = "at most so many (${DEFAULT-VALUE})")
  private int most;

  @Option(names = "--faults", description = "how often each part was the first suspect, by rail")
  private boolean faults;

  @Option(names = "--rebuild", description = "read every folder anew")
  private boolean rebuild;

  @Option(names = "--check", description = "compare every run found with its stored checksums")
  private boolean check;

  @Option(
      names = "--drop-frames",
      description =
          "drop the frames of every run listed whose findings and planes are kept; such a run can be"
              + " read but not replayed. Needs --until")
  private boolean dropFrames;

  @Option(
      names = "--catalogue",
      description =
          "JDBC address of a shared catalogue, for example jdbc:postgresql://server/railglow, instead"
              + " of the one that RAILGLOW_CATALOGUE names; user and password come from"
              + " RAILGLOW_CATALOGUE_USER and RAILGLOW_CATALOGUE_PASSWORD")
  private String address;

  RunsCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() throws Exception {
    RunFolders folders = new RunFolders(runs);
    if (dropFrames && until == null) {
      throw new UserMistake("--drop-frames needs --until, so that no new run loses its frames");
    }
    if (folders.list().isEmpty() && address == null && CatalogueAt.shared() == null) {
      throw new UserMistake("there are no runs in " + runs + "; name their place with --runs");
    }
    try (Catalogue catalogue = CatalogueAt.open(address, runs)) {
      Progress progress = new Progress(terminal, "runs read");
      for (Damage damage : catalogue.refresh(folders, rebuild, progress::at)) {
        terminal.complain(damage.file() + ": " + damage.what());
      }
      progress.end();
      if (faults) {
        faults(catalogue.faults(board));
        return ExitCode.DONE;
      }
      List<RunSummary> found = catalogue.find(search());
      if (found.isEmpty()) {
        terminal.say("No run fits.");
      }
      boolean sound = true;
      for (RunSummary run : found) {
        list(run);
        if (dropFrames) {
          drop(run);
        }
        sound &= !check || isSound(run);
      }
      return sound ? ExitCode.DONE : ExitCode.DIFFERENT;
    } catch (CatalogueException e) {
      throw new UserMistake(e.getMessage());
    }
  }

  private RunSearch search() {
    ZoneId zone = ZoneId.systemDefault();
    return new RunSearch(
        board,
        rail,
        part,
        verdict,
        from == null ? null : from.atStartOfDay(zone).toInstant(),
        until == null ? null : until.plusDays(1).atStartOfDay(zone).toInstant(),
        words,
        most);
  }

  private void list(RunSummary run) {
    terminal.say(
        DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm")
                .format(run.started().atZone(ZoneId.systemDefault()))
            + "  "
            + run.folder());
    terminal.say("    " + (run.headline().isEmpty() ? said(run.verdict()) : run.headline()));
    if (run.ending().equals(RunSummary.NOT_FINISHED)) {
      terminal.say("    This run did not finish.");
    }
  }

  private static String said(String verdict) {
    return verdict.equals(RunSummary.NO_FINDINGS)
        ? "No findings: replay the run to make them."
        : verdict.toLowerCase(java.util.Locale.ROOT).replace('_', ' ');
  }

  private boolean isSound(RunSummary run) throws java.io.IOException {
    try {
      List<Damage> damages = Checksums.check(new RunFolder(run.folder()));
      terminal.say(damages.isEmpty() ? "    Every stored file is as it was." : "    CHANGED:");
      damages.forEach(damage -> terminal.say("      " + damage.file() + " " + damage.what()));
      return damages.isEmpty();
    } catch (JournalException e) {
      terminal.say("    " + e.getMessage());
      return false;
    }
  }

  private void drop(RunSummary run) throws java.io.IOException {
    RunFolder folder = new RunFolder(run.folder());
    Optional<String> reason = Retention.reasonToKeep(folder);
    terminal.say(
        reason.isPresent()
            ? "    Frames stay: " + reason.get() + "."
            : "    Frames dropped: "
                + (Retention.dropFrames(folder, "runs --drop-frames --until " + until) >> 20)
                + " MB freed.");
  }

  private void faults(List<FaultCount> counts) {
    if (counts.isEmpty()) {
      terminal.say("No run of such a board found heat at a part.");
    }
    for (FaultCount count : counts) {
      terminal.say(
          count.rail() + "  " + count.part() + "  " + count.count() + " of " + count.all());
    }
  }
}
