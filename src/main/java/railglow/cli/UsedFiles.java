package railglow.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.LinkedHashMap;
import java.util.Map;
import railglow.config.EnteredFile;
import railglow.config.LoadedBoard;
import railglow.journal.RunFolder;

/** Copies what a run was made with into its folder, so that the run can be repeated from there. */
final class UsedFiles {
  private UsedFiles() {}

  /**
   * Copies each file into a folder of its role's name.
   *
   * @param used role to file
   * @param board null when there is none; its files stay together, as they refer to each other
   * @return role to the path inside the run folder
   */
  static Map<String, String> copy(Map<String, Path> used, LoadedBoard board, RunFolder folder)
      throws IOException {
    Map<String, String> copies = new LinkedHashMap<>();
    for (Map.Entry<String, Path> entry : used.entrySet()) {
      Path file = entry.getValue().toAbsolutePath().normalize();
      Path copy = folder.used().resolve(entry.getKey()).resolve(file.getFileName().toString());
      copies.put(entry.getKey(), copied(file, copy, folder));
    }
    if (board != null) {
      Path home = board.usedFiles().get("board").toAbsolutePath().normalize().getParent();
      for (Map.Entry<String, Path> entry : board.usedFiles().entrySet()) {
        Path file = entry.getValue().toAbsolutePath().normalize();
        Path inside = file.startsWith(home) ? home.relativize(file) : file.getFileName();
        Path copy = folder.used().resolve("board").resolve(inside.toString());
        copies.put(entry.getKey(), copied(file, copy, folder));
      }
      if (!board.entered().isNothing()) {
        EnteredFile.write(entered(folder), board.entered());
        copies.put("entered", folder.root().relativize(entered(folder)).toString());
      }
    }
    return copies;
  }

  /** What was corrected of that later. */
  static Path corrected(RunFolder folder) {
    return folder.root().resolve("corrected.yaml");
  }

  /** What was entered beside the board file when the run was made. */
  static Path entered(RunFolder folder) {
    return folder.used().resolve("entered.yaml");
  }

  private static String copied(Path file, Path copy, RunFolder folder) throws IOException {
    Files.createDirectories(copy.getParent());
    Files.copy(file, copy, StandardCopyOption.REPLACE_EXISTING);
    return folder.root().relativize(copy).toString();
  }
}
