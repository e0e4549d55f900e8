package railglow.journal;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * A plain table of numbers and words with a header line: commas between, no quotes. Errors name
 * file, line and value.
 */
final class CsvTable {
  private final Path file;
  private final List<String> columns;
  private final List<String[]> rows = new ArrayList<>();
  private final List<Integer> lineNumbers = new ArrayList<>();

  private CsvTable(Path file, List<String> columns) {
    this.file = file;
    this.columns = columns;
  }

  static CsvTable read(Path file) throws IOException {
    List<String> lines;
    try {
      lines = Files.readAllLines(file, StandardCharsets.UTF_8);
    } catch (NoSuchFileException e) {
      throw new JournalException("there is no table at " + file, e);
    } catch (CharacterCodingException e) {
      throw new JournalException(file + " is not a text file in UTF-8", e);
    }
    if (lines.isEmpty() || lines.get(0).isBlank()) {
      throw new JournalException(file + ":1: the names of the columns are not there");
    }
    String first = lines.get(0).startsWith("\uFEFF") ? lines.get(0).substring(1) : lines.get(0);
    CsvTable table =
        new CsvTable(file, Arrays.stream(first.split(",", -1)).map(String::strip).toList());
    for (int i = 1; i < lines.size(); i++) {
      if (lines.get(i).isBlank()) {
        continue;
      }
      String[] cells = lines.get(i).split(",", -1);
      if (cells.length != table.columns.size()) {
        throw new JournalException(
            String.format(
                "%s:%d: %d columns where the first line names %d",
                file, i + 1, cells.length, table.columns.size()));
      }
      table.rows.add(cells);
      table.lineNumbers.add(i + 1);
    }
    return table;
  }

  int rows() {
    return rows.size();
  }

  /** The place of the first of these names among the columns; -1 when there is none. */
  int find(String... names) {
    for (String name : names) {
      int index = columns.indexOf(name);
      if (index >= 0) {
        return index;
      }
    }
    return -1;
  }

  /** Like {@link #find}, but one must be there. */
  int require(String... names) throws JournalException {
    int index = find(names);
    if (index < 0) {
      throw new JournalException(
          file
              + ":1: there is no column "
              + String.join(" or ", names)
              + "; the columns are "
              + String.join(", ", columns));
    }
    return index;
  }

  String text(int row, int column) {
    return rows.get(row)[column].strip();
  }

  double number(int row, int column) throws JournalException {
    String text = text(row, column);
    try {
      double value = Double.parseDouble(text);
      if (Double.isFinite(value)) {
        return value;
      }
    } catch (NumberFormatException e) {
      throw error(row, column, "'" + text + "' is not a number");
    }
    throw error(row, column, "'" + text + "' is not a finite number");
  }

  JournalException error(int row, int column, String what) {
    return new JournalException(
        file + ":" + lineNumbers.get(row) + ": column " + columns.get(column) + ": " + what);
  }
}
