package railglow.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import railglow.board.Board;
import railglow.config.BoardFile;
import railglow.config.ConfigException;
import railglow.journal.RunFolder;
import railglow.journal.RunHeader;

/** Finds a run folder that a user named, and the board that was used in it. */
final class RunFolderOf {
  private RunFolderOf() {}

  static RunFolder existing(Path given) throws UserMistake {
    if (!Files.isDirectory(given)) {
      throw new UserMistake("there is no run folder " + given);
    }
    RunFolder folder = new RunFolder(given);
    if (!Files.exists(folder.journal())) {
      throw new UserMistake(given + " is not a run folder: it holds no journal");
    }
    return folder;
  }

  /** As {@link #board}; a board file that can't be read is said and done without. */
  static Board boardOrNull(RunFolder folder, RunHeader header, Terminal terminal) {
    try {
      return board(folder, header).orElse(null);
    } catch (ConfigException e) {
      terminal.complain("The board file in the run folder can't be used: " + e.getMessage());
      return null;
    }
  }

  /** The board file kept in the run folder; empty when the run had none. */
  static Optional<Board> board(RunFolder folder, RunHeader header) throws ConfigException {
    String copy = header.usedFiles().get("board");
    if (copy == null) {
      return Optional.empty();
    }
    Path file = folder.root().resolve(copy);
    return Files.exists(file) ? Optional.of(BoardFile.read(file).board()) : Optional.empty();
  }
}
