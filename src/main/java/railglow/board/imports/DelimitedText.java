package railglow.board.imports;

import java.util.ArrayList;
import java.util.List;

/**
 * Splits text into rows of cells; quoted cells may hold the delimiter, doubled quotes and line
 * ends.
 *
 * <p>Total but for a quote that never closes. Stateless.
 */
public final class DelimitedText {
  /** Stands for "one or more blanks". */
  public static final char BLANKS = ' ';

  private final String text;
  private final char delimiter;
  private final Refusal refusal;
  private int at;
  private int line = 1;
  private int lineStart;

  private DelimitedText(String text, char delimiter, Refusal refusal) {
    this.text = text;
    this.delimiter = delimiter;
    this.refusal = refusal;
  }

  /** Makes the exception of the file's own kind. */
  @FunctionalInterface
  public interface Refusal {
    ImportException at(int line, int column, String message);
  }

  /** Rows in order; blank lines are left out. */
  public static List<List<Cell>> rows(String text, char delimiter, Refusal refusal) {
    DelimitedText reader = new DelimitedText(text, delimiter, refusal);
    List<List<Cell>> rows = new ArrayList<>();
    while (reader.at < text.length()) {
      List<Cell> row = reader.row();
      if (row.stream().anyMatch(cell -> !cell.text().isEmpty())) {
        rows.add(row);
      }
    }
    return rows;
  }

  private List<Cell> row() {
    List<Cell> cells = new ArrayList<>();
    while (true) {
      skipBlanks();
      int cellLine = line;
      int cellColumn = at - lineStart + 1;
      String cell = at < text.length() && text.charAt(at) == '"' ? quoted() : plain();
      cells.add(new Cell(cell, cellLine, cellColumn));
      skipBlanks();
      if (at >= text.length() || endOfLine()) {
        return cells;
      }
      if (delimiter != BLANKS && text.charAt(at) == delimiter) {
        at++;
      }
    }
  }

  private void skipBlanks() {
    while (at < text.length() && isBlank(text.charAt(at)) && text.charAt(at) != delimiterOrNone()) {
      at++;
    }
  }

  private char delimiterOrNone() {
    return delimiter == BLANKS ? '\n' : delimiter;
  }

  private static boolean isBlank(char c) {
    return c == ' ' || c == '\t' || c == '\u00a0' || c == '\ufeff';
  }

  private String plain() {
    int start = at;
    while (at < text.length() && !ends(text.charAt(at))) {
      at++;
    }
    return text.substring(start, at).strip();
  }

  private boolean ends(char c) {
    return c == '\n' || c == '\r' || (delimiter == BLANKS ? isBlank(c) : c == delimiter);
  }

  private String quoted() {
    int startLine = line;
    int startColumn = at - lineStart + 1;
    StringBuilder cell = new StringBuilder();
    at++;
    while (at < text.length()) {
      char c = text.charAt(at);
      if (c == '"' && at + 1 < text.length() && text.charAt(at + 1) == '"') {
        cell.append('"');
        at += 2;
      } else if (c == '"') {
        at++;
        // What follows the closing quote up to the delimiter still belongs to the cell.
        return (cell + plain()).strip();
      } else {
        cell.append(c);
        at++;
        if (c == '\n') {
          line++;
          lineStart = at;
        }
      }
    }
    throw refusal.at(startLine, startColumn, "this quote is never closed; close it or remove it");
  }

  private boolean endOfLine() {
    char c = text.charAt(at);
    if (c != '\n' && c != '\r') {
      return false;
    }
    at += c == '\r' && at + 1 < text.length() && text.charAt(at + 1) == '\n' ? 2 : 1;
    line++;
    lineStart = at;
    return true;
  }
}
