package railglow.casebook;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import railglow.board.Suspect;
import railglow.board.imports.ImportException;
import railglow.board.ladder.LadderJudge;
import railglow.board.ladder.LadderVerdict;
import railglow.board.ladder.StepsReader;
import railglow.journal.Findings;
import railglow.journal.FindingsFile;
import railglow.journal.JournalEnds;
import railglow.journal.JournalException;
import railglow.journal.RunFolder;
import railglow.journal.RunHeader;
import railglow.units.Quantity;
import railglow.units.Unit;

/**
 * What a catalogue keeps of a run; all of it comes from the run's folder.
 *
 * @param runId the name it was given; two benches may give the same one
 * @param folder where it lies
 * @param verdict as in the findings; {@code NO_FINDINGS} where there are none
 * @param headline of the findings; empty where there are none
 * @param suspects parts by rank
 * @param railOhms NaN when not measured
 * @param ending the cause of the end; {@code NOT_FINISHED} where the journal has no closing entry
 * @param text what a search for words looks in, lower case
 */
public record RunSummary(
    String runId,
    Path folder,
    Instant started,
    String board,
    String rail,
    String verdict,
    String headline,
    List<String> suspects,
    double railOhms,
    String ending,
    String text) {
  public static final String NO_FINDINGS = "NO_FINDINGS";

  /** The verdict of a log: it has none. */
  public static final String LOG = "LOG";

  /**
   * The verdict of a ladder or a reading made with the supply: what its path is, is its headline.
   */
  public static final String LADDER = "LADDER";

  public static final String NOT_FINISHED = "NOT_FINISHED";

  public RunSummary {
    suspects = List.copyOf(suspects);
  }

  /** What tells this run from every other: its name and its start. */
  public String key() {
    return runId + "@" + started;
  }

  /**
   * Reads a folder.
   *
   * @throws JournalException when its journal has no readable header
   */
  public static RunSummary of(RunFolder folder) throws IOException {
    JournalEnds ends = JournalEnds.read(folder.journal());
    RunHeader header = ends.header();
    Optional<Findings> findings;
    try {
      findings = Optional.of(FindingsFile.read(folder.findings()));
    } catch (JournalException e) {
      findings = Optional.empty();
    }
    List<String> suspects =
        findings
            .map(f -> f.suspects().stream().map(Suspect::part).distinct().toList())
            .orElse(List.of());
    Optional<LadderVerdict> ladder = ladder(folder, ends);
    String headline =
        header.isLog()
            ? logged(ends)
            : ladder
                .map(path -> "A ladder: " + path.kind().words() + "; " + path.reason() + ".")
                .orElse(findings.map(Findings::headline).orElse(""));
    String text =
        String.join(
                " ",
                folder.name(),
                header.board(),
                header.rail(),
                ends.sequenceName(),
                header.camera().name(),
                header.supplyIdentity(),
                headline,
                findings.map(Findings::nextStep).orElse(""),
                findings
                    .map(
                        f ->
                            f.suspects().stream()
                                .map(Suspect::reason)
                                .collect(Collectors.joining(" ")))
                    .orElse(""))
            .toLowerCase(Locale.ROOT);
    return new RunSummary(
        header.runId(),
        folder.root().toAbsolutePath().normalize(),
        header.started(),
        header.board(),
        header.rail(),
        header.isLog()
            ? LOG
            : ladder.isPresent()
                ? LADDER
                : findings.map(f -> f.verdict().name()).orElse(NO_FINDINGS),
        headline,
        suspects,
        ladder.map(LadderVerdict::ohms).orElse(findings.map(Findings::railOhms).orElse(Double.NaN)),
        ends.cause().orElse(NOT_FINISHED),
        text);
  }

  /** What the kept table of steps says; empty for a run of another kind, or one without a table. */
  private static Optional<LadderVerdict> ladder(RunFolder folder, JournalEnds ends)
      throws IOException {
    Path table = folder.root().resolve("steps.csv");
    if (!ends.sequenceName().equals("ladder") || !Files.isRegularFile(table)) {
      return Optional.empty();
    }
    try {
      return Optional.of(
          LadderJudge.judge(StepsReader.read(table.toString(), Files.readAllBytes(table))));
    } catch (ImportException e) {
      return Optional.empty(); // stopped before its first step, or damaged
    }
  }

  private static String logged(JournalEnds ends) {
    String level =
        ends.levelVolts() > 0
            ? Quantity.format(ends.levelVolts(), Unit.VOLT) + " held steadily"
            : ends.header().supplyIdentity().isEmpty()
                ? "camera alone"
                : "beside a supply driven by somebody else";
    return ends.closed()
        .map(
            closed ->
                String.format(
                    Locale.ROOT,
                    "A log of %.1f s, %s.",
                    (closed.nanos() - ends.header().startNanos()) / 1e9,
                    level))
        .orElse("A log, " + level + ".");
  }
}
