package railglow.casebook;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import railglow.journal.Checksums;
import railglow.journal.JournalEnds;
import railglow.journal.JournalException;
import railglow.journal.RunFolder;
import railglow.journal.RunHeader;

/**
 * Runs and readings of boards known to be good, as plain files that can be kept under version
 * control: {@code <board>/<rail>/<run>/} holds a run without its frames, {@code <board>/readings/}
 * tables of readings. Thread-safe.
 *
 * @param root of the library
 */
public record KnownGoodLibrary(Path root) {
  /**
   * Keeps a run: everything but frames, transcript and what can be made anew.
   *
   * @return where it is kept
   * @throws JournalException when the run did not finish, has no findings, or is kept already
   */
  public RunFolder keep(RunFolder run) throws IOException {
    JournalEnds ends = JournalEnds.read(run.journal());
    boolean found = ends.header().isLog() || Files.isRegularFile(run.findings());
    if (ends.closed().isEmpty() || !found) {
      throw new JournalException(
          run.name()
              + " did not finish or has no findings: only whole runs are kept as known-good");
    }
    RunHeader header = ends.header();
    Path rail = board(header.board()).resolve(RunFolders.word(header.rail(), "rail"));
    Path target = rail.resolve(RunFolders.word(run.name(), "run", 120));
    Files.createDirectories(rail);
    try {
      Files.createDirectory(target);
    } catch (java.nio.file.FileAlreadyExistsException e) {
      throw new JournalException(target + " is there already: this run is kept", e);
    }
    for (String name : Checksums.of(run, Checksums.Scope.MEASURED).keySet()) {
      if (!name.equals("frames.rgf") && !name.equals("transcript.txt")) {
        Path copy = target.resolve(name);
        Files.createDirectories(copy.getParent());
        Files.copy(run.root().resolve(name), copy, StandardCopyOption.COPY_ATTRIBUTES);
      }
    }
    RunFolder kept = new RunFolder(target);
    Checksums.write(kept);
    return kept;
  }

  /** Keeps a table of readings of a good board under its own name. */
  public Path keepReadings(String board, Path table) throws IOException {
    Path target = board(board).resolve("readings").resolve(table.getFileName());
    Files.createDirectories(target.getParent());
    try {
      return Files.copy(table, target);
    } catch (java.nio.file.FileAlreadyExistsException e) {
      throw new JournalException(target + " is there already; give the table another name", e);
    }
  }

  /** Runs kept of a board's rail, by name; empty when there are none. */
  public List<RunFolder> runs(String board, String rail) throws IOException {
    return new RunFolders(board(board).resolve(RunFolders.word(rail, "rail"))).list();
  }

  /** Tables of readings kept of a board, by name. */
  public List<Path> readings(String board) throws IOException {
    Path folder = board(board).resolve("readings");
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> tables = Files.list(folder)) {
      return new ArrayList<>(tables.sorted().toList());
    }
  }

  private Path board(String name) {
    return root.resolve(RunFolders.word(name, "board", 60));
  }
}
