package railglow.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import railglow.board.Board;
import railglow.config.BoardFile;
import railglow.config.ConfigException;
import railglow.config.ConfigProblem;
import railglow.config.EnteredFile;
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

  /** The board of a run that had one, as its file says, without what was entered. */
  static Board statedBoard(RunFolder folder, RunHeader header) throws ConfigException {
    return BoardFile.read(folder.root().resolve(header.usedFiles().get("board"))).board();
  }

  /** The board kept in the run folder with what was entered; empty when the run had none. */
  static Optional<Board> board(RunFolder folder, RunHeader header) throws ConfigException {
    String copy = header.usedFiles().get("board");
    if (copy == null) {
      return Optional.empty();
    }
    Path file = folder.root().resolve(copy);
    if (!Files.exists(file)) {
      return Optional.empty();
    }
    Path corrected = UsedFiles.corrected(folder);
    try {
      return Optional.of(
          EnteredFile.read(UsedFiles.entered(folder))
              .correctedBy(EnteredFile.read(corrected))
              .on(statedBoard(folder, header)));
    } catch (IllegalArgumentException e) {
      throw new ConfigException(List.of(new ConfigProblem(corrected, 0, e.getMessage())));
    }
  }
}
