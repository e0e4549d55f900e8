package railglow.board.readings;

import railglow.board.imports.ImportException;

/** A file of readings that can't be read. */
public final class ReadingsException extends ImportException {
  ReadingsException(String file, int line, int column, String message) {
    super(file, line, column, message);
  }
}
