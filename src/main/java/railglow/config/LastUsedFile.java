package railglow.config;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/**
 * What was last used at a bench, in a file of its own beside the bench file: {@code
 * bench-mine.yaml} has {@code bench-mine-last-used.yaml}. Deleting it forgets.
 */
public final class LastUsedFile {
  private LastUsedFile() {}

  /** Where it is kept. */
  public static Path beside(Path benchFile) {
    return BesideBench.file(benchFile, "last-used");
  }

  /**
   * Reads what is kept beside a bench file; empty when nothing is, or when the board file is gone.
   *
   * @throws ConfigException with every problem found
   */
  public static Optional<LastUsed> readBeside(Path benchFile) throws ConfigException {
    Path path = beside(benchFile);
    if (!Files.exists(path)) {
      return Optional.empty();
    }
    ConfigFile file = ConfigFile.read(path).as(FileKind.LAST_USED);
    ConfigSection root = file.root();
    String board = root.text("board");
    String rail = root.text("rail");
    file.finish();
    Path boardFile = path.resolveSibling(board);
    return Files.exists(boardFile) ? Optional.of(new LastUsed(boardFile, rail)) : Optional.empty();
  }

  /**
   * Writes the file whole or not at all.
   *
   * @throws IOException when it can't be written
   */
  public static void writeBeside(Path benchFile, LastUsed used) throws IOException {
    BesideBench.write(
        beside(benchFile),
        "# What was last worked on at this bench; taken again where a command does not say.\n"
            + "board: "
            + BesideBench.quoted(used.board().toAbsolutePath().toString())
            + "\nrail: "
            + BesideBench.quoted(used.rail())
            + "\n");
  }
}
