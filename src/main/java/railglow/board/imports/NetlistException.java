package railglow.board.imports;

/** A netlist file that can't be read. */
public final class NetlistException extends ImportException {
  public NetlistException(String file, int line, int column, String message) {
    super(file, line, column, message);
  }
}
