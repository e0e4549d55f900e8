package railglow.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import railglow.board.Board;
import railglow.journal.Checksums;
import railglow.journal.Findings;
import railglow.journal.FindingsFile;
import railglow.journal.JournalEnds;
import railglow.journal.NpyFile;
import railglow.journal.RunFolder;
import railglow.journal.RunHeader;
import railglow.report.Placement;
import railglow.report.RunReport;
import railglow.run.FindingsMaker;
import railglow.run.Replay;
import railglow.run.RunPower;
import railglow.run.RunResults;
import railglow.run.logging.LogReplay;
import railglow.thermal.inverse.PowerMap;

/** Makes the findings again from what was recorded. */
@Command(
    name = "replay",
    mixinStandardHelpOptions = true,
    description =
        "Makes the findings again from a run folder's frames, edges and readings: the same bits on any"
            + " machine. Of the looks at the data only those are made that the findings depend on. Without"
            + " --verify, findings, pictures and report are written anew.")
final class ReplayCommand implements Callable<Integer> {
  private final Terminal terminal;

  @Parameters(index = "0", paramLabel = "RUN", description = "the run folder")
  private Path run;

  @Option(
      names = "--verify",
      description =
          "only compare with the recorded findings: exit 0 when bit-identical, 1 when not")
  private boolean verify;

  @Mixin private EnteredOptions entered = new EnteredOptions();

  ReplayCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() throws Exception {
    RunFolder folder = RunFolderOf.existing(run);
    RunHeader header = JournalEnds.read(folder.journal()).header();
    if (verify && entered.areGiven()) {
      throw new UserMistake(
          "--verify compares with what was recorded: leave --clip and --reflected out");
    }
    SumsMeanwhile sums = verify ? SumsMeanwhile.begin(folder) : null;
    if (header.isLog()) {
      return log(folder, sums);
    }
    entered.correct(folder, header);
    Progress progress = new Progress(terminal, "frames replayed");
    Replay.Result result = Replay.of(folder, progress::at);
    progress.end();
    Board board = RunFolderOf.board(folder, result.journal().header()).orElse(null);
    Optional<PowerMap> power = RunPower.map(result.journal().header(), result.reduced(), board);
    Findings findings =
        FindingsMaker.make(result.journal().header(), result.reduced(), board, power);
    if (!result.journal().finished()) {
      terminal.say("This run did not finish: " + result.journal().ending());
    }
    return verify ? compare(folder, findings, sums) : write(folder, result, findings, board, power);
  }

  /**
   * A log has no findings; what was followed in each frame is compared instead.
   *
   * @param sums null when nothing is to be compared
   */
  private int log(RunFolder folder, SumsMeanwhile sums) throws Exception {
    Progress progress = new Progress(terminal, "frames replayed");
    LogReplay.Result result = LogReplay.of(folder, progress::at);
    progress.end();
    if (!result.journal().finished()) {
      terminal.say("This log did not finish: " + result.journal().ending());
    }
    if (verify) {
      List<String> differences = new ArrayList<>(LogReplay.differences(result));
      result.journal().damages().forEach(damage -> differences.add(damage.toString()));
      return verdict(
          sums, differences, "what was followed in " + result.followed().size() + " frames");
    }
    Files.createDirectories(folder.planes());
    if (result.baseline() != null) {
      NpyFile.write(folder.plane("background"), result.baseline());
    }
    Checksums.write(folder);
    Board board = RunFolderOf.boardOrNull(folder, result.journal().header(), terminal);
    RunReport.write(folder, Placement.of(board, result.journal().header().rail()))
        .forEach(terminal::complain);
    terminal.say("Report     " + folder.report());
    return ExitCode.DONE;
  }

  private int compare(RunFolder folder, Findings findings, SumsMeanwhile sums) throws Exception {
    if (!Files.exists(folder.findings())) {
      throw new UserMistake(
          folder.root() + " holds no findings to compare with; replay without --verify makes them");
    }
    List<String> differences =
        new ArrayList<>(FindingsFile.difference(FindingsFile.read(folder.findings()), findings));
    return verdict(sums, differences, "the findings");
  }

  private int verdict(SumsMeanwhile sums, List<String> differences, String what) throws Exception {
    sums.damages().forEach(damage -> differences.add(damage.toString()));
    if (differences.isEmpty()) {
      terminal.say(
          "Replayed: "
              + what
              + (what.endsWith("findings") ? " are" : " is")
              + " the same, bit for bit.");
      return ExitCode.DONE;
    }
    terminal.complain("Replayed: " + what + " or the files are not the same.");
    differences.forEach(difference -> terminal.complain("  " + difference));
    return ExitCode.DIFFERENT;
  }

  private int write(
      RunFolder folder,
      Replay.Result result,
      Findings findings,
      Board board,
      Optional<PowerMap> power)
      throws Exception {
    RunResults.write(folder, result.reduced(), findings, power);
    Checksums.write(folder);
    RunReport.write(folder, Placement.of(board, result.journal().header().rail()));
    terminal.say(Summary.of(findings, folder));
    return ExitCode.DONE;
  }
}
