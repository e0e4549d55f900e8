package railglow.board.ladder;

import railglow.board.imports.ImportException;

/** A table of steps that can't be read. */
public final class LadderException extends ImportException {
  LadderException(String file, int line, int column, String message) {
    super(file, line, column, message);
  }
}
