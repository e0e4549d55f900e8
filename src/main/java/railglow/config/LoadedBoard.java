package railglow.config;

import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import railglow.board.Board;
import railglow.board.Entered;
import railglow.board.places.Place;

/**
 * A board and the files it came from.
 *
 * @param places followed in logs, as the board file names them
 * @param entered beside its file, already on the board
 * @param usedFiles role (board, placement, netlist, picture) to the file, all that were there
 */
public record LoadedBoard(
    Board board, List<Place> places, Entered entered, Map<String, Path> usedFiles) {
  public LoadedBoard {
    places = List.copyOf(places);
    usedFiles = Collections.unmodifiableMap(new TreeMap<>(usedFiles));
  }

  /**
   * The board with what the operator entered beside its file.
   *
   * @throws IllegalArgumentException with one sentence when that can't be
   */
  public LoadedBoard with(Entered more) {
    return new LoadedBoard(more.on(board), places, more, usedFiles);
  }
}
