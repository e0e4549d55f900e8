package railglow.board.imports;

/** A file that can't be read as what it should be; says where and what to do. */
public abstract class ImportException extends IllegalArgumentException {
  private final String file;
  private final int line;
  private final int column;

  protected ImportException(String file, int line, int column, String message) {
    super(file + ":" + line + ":" + column + ": " + message);
    this.file = file;
    this.line = line;
    this.column = column;
  }

  public String file() {
    return file;
  }

  /** From 1. */
  public int line() {
    return line;
  }

  /** Character in the line, from 1. */
  public int column() {
    return column;
  }
}
