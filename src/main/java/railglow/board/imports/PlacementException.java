package railglow.board.imports;

/** A placement file that can't be read. */
public final class PlacementException extends ImportException {
  public PlacementException(String file, int line, int column, String message) {
    super(file, line, column, message);
  }
}
