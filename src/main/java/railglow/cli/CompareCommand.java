package railglow.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import railglow.board.Board;
import railglow.board.Suspect;
import railglow.board.compare.ComparedRun;
import railglow.board.compare.ComparedSource;
import railglow.board.compare.ComparisonWords;
import railglow.board.compare.ComparisonWords.Question;
import railglow.board.compare.RunComparison;
import railglow.board.geometry.Registration;
import railglow.journal.Findings;
import railglow.journal.FindingsFile;
import railglow.journal.JournalException;
import railglow.journal.JournalReader;
import railglow.journal.RunFolder;

/** Two runs side by side. */
@Command(
    name = "compare",
    mixinStandardHelpOptions = true,
    description = {
      "Compares the heat sources of two runs: at two injection points (what stays hot at both is the"
          + " fault), before and after a repair, or a known-good board with a faulty one.",
      "Swings in step with the pulse are compared per watt (settled rises where the runs pulsed"
          + " differently), with the probability that chance alone makes such a difference;"
          + " so are the whole pictures. Where the camera was moved between the runs, the second is"
          + " tied to the board again by its thermal picture, if that has texture enough."
    })
final class CompareCommand implements Callable<Integer> {
  private final Terminal terminal;

  @Parameters(
      index = "0",
      paramLabel = "FIRST",
      description = "run folder: the first point, before, or the good board")
  private Path first;

  @Parameters(
      index = "1",
      paramLabel = "SECOND",
      description = "run folder: the second point, after, or the faulty board")
  private Path second;

  @Option(
      names = "--as",
      paramLabel = "QUESTION",
      description = "two-points (default), before-after or known-good")
  private String question = "two-points";

  CompareCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  private record Run(ComparedRun compared, ComparedPlanes.Kept kept) {
    Findings findings() {
      return kept.findings();
    }

    String rail() {
      return kept.header().rail();
    }

    String board() {
      return kept.header().board();
    }

    Run tiedBy(Optional<Registration> registration) {
      return new Run(
          new ComparedRun(
              compared.label(),
              compared.sources(),
              compared.watts(),
              compared.upperLimitKelvin(),
              compared.pulses(),
              registration),
          kept);
    }
  }

  @Override
  public Integer call() throws Exception {
    Question asked = asked();
    RunFolderOf.existing(first);
    RunFolderOf.existing(second);
    if (first.toRealPath().equals(second.toRealPath())) {
      throw new UserMistake("FIRST and SECOND are the same run: " + first);
    }
    Run a = run(first, label(first, second));
    Run b = run(second, label(second, first));
    if (!a.findings().unit().equals(b.findings().unit())) {
      throw new UserMistake(
          "one run is in kelvin and the other in counts; calibrate the camera in both or in none");
    }
    if (!a.board().equals(b.board())) {
      throw new UserMistake(
          "the runs are of different boards: '" + a.board() + "' and '" + b.board() + "'");
    }
    List<String> lines = new ArrayList<>();
    Optional<Registration> registration =
        ComparedPlanes.secondRegistration(a.kept(), b.kept(), lines);
    Run other = b.tiedBy(registration);
    RunComparison comparison;
    try {
      comparison = RunComparison.of(a.compared(), other.compared());
    } catch (IllegalArgumentException e) {
      throw new UserMistake(e.getMessage());
    }
    List<ComparedSource> alike = new ArrayList<>();
    for (ComparedSource source : comparison.sources()) {
      if (ComparedPlanes.asWarm(a.kept(), other.kept(), registration, source)) {
        alike.add(source);
      }
    }
    comparison = comparison.lookedAt(alike::contains);
    if (!a.rail().equals(b.rail())) {
      Summary.wrap(
          lines, "Note       ", "the runs injected different rails: " + a.rail() + ", " + b.rail());
    }
    if (!comparison.inMillimetres()) {
      Summary.wrap(
          lines,
          "Note       ",
          "without a registration the camera must not have moved between the runs.");
    }
    boolean tied = comparison.inMillimetres();
    List<String> words =
        ComparisonWords.of(
            asked,
            a.compared(),
            other.compared(),
            comparison,
            a.findings().unit() + "/W",
            source -> name(source, a.findings(), other.findings(), tied));
    Summary.wrap(lines, "Conclusion ", words.get(0));
    words.subList(1, words.size()).forEach(line -> Summary.wrap(lines, "           ", line));
    lines.addAll(ComparedPlanes.differences(a.kept(), other.kept(), registration));
    terminal.say(lines);
    return ExitCode.DONE;
  }

  private Question asked() throws UserMistake {
    for (Question candidate : Question.values()) {
      if (candidate.name().toLowerCase(Locale.ROOT).replace('_', '-').equals(question)) {
        return candidate;
      }
    }
    throw new UserMistake(
        "--as is '" + question + "'; two-points, before-after and known-good are known");
  }

  /** The run's name; where both have the same, with as many folders above as tell them apart. */
  private static String label(Path run, Path other) throws IOException {
    Path own = run.toRealPath();
    Path against = other.toRealPath();
    int names = 1;
    while (names < own.getNameCount() && tail(own, names).equals(tail(against, names))) {
      names++;
    }
    return tail(own, names).toString();
  }

  private static Path tail(Path path, int names) {
    int count = path.getNameCount();
    return path.subpath(Math.max(0, count - names), count);
  }

  private static Run run(Path given, String label) throws Exception {
    RunFolder folder = RunFolderOf.existing(given);
    try {
      Findings findings = FindingsFile.read(folder.findings());
      if (findings.verdict() == Findings.Verdict.NOT_ENOUGH_DATA) {
        throw new UserMistake(given + " has too few good cycles for any comparison");
      }
      var header = JournalReader.read(folder).header();
      Optional<Board> board = RunFolderOf.board(folder, header);
      return new Run(
          new ComparedRun(
              label,
              findings.sources(),
              findings.onWatts(),
              findings.upperLimit(),
              ComparedPlanes.pulses(header),
              board.flatMap(Board::registration)),
          new ComparedPlanes.Kept(folder, header, findings, board));
    } catch (JournalException e) {
      throw new UserMistake(e.getMessage());
    } catch (IOException e) {
      throw new UserMistake(given + " can't be read: " + e.getMessage());
    }
  }

  /** The part a source was ranked with, or its place. */
  private static String name(ComparedSource source, Findings a, Findings b, boolean millimetres) {
    Findings findings = source.first() >= 0 ? a : b;
    int index = source.first() >= 0 ? source.first() : source.second();
    return findings.suspects().stream()
        .filter(suspect -> suspect.sourceIndex() == index)
        .map(Suspect::part)
        .findFirst()
        .orElseGet(
            () ->
                String.format(
                    Locale.ROOT,
                    millimetres ? "x %.1f mm, y %.1f mm" : "column %.1f, row %.1f",
                    source.x(),
                    source.y()));
  }
}
