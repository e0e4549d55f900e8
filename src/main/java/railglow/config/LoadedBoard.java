package railglow.config;

import java.nio.file.Path;
import java.util.Collections;
import java.util.Map;
import java.util.TreeMap;
import railglow.board.Board;

/**
 * A board and the files it came from.
 *
 * @param usedFiles role (board, placement, netlist, picture) to the file, all that were there
 */
public record LoadedBoard(Board board, Map<String, Path> usedFiles) {
  public LoadedBoard {
    usedFiles = Collections.unmodifiableMap(new TreeMap<>(usedFiles));
  }
}
