package railglow.board.imports;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import railglow.board.imports.PlacementColumns.Field;

/**
 * A placement file cut into header and rows, whatever its delimiter.
 *
 * @param headers the header's cells
 * @param index of each field found
 * @param rows below the header, comments left out
 * @param statedUnit a unit written above the header
 */
record PlacementTable(
    List<Cell> headers,
    Map<Field, Integer> index,
    List<List<Cell>> rows,
    Optional<LengthUnit> statedUnit) {
  private static final char[] DELIMITERS = {',', ';', '\t', DelimitedText.BLANKS};
  private static final int HEADER_WITHIN = 40;
  private static final Pattern UNIT_LINE =
      Pattern.compile("\\bunits?\\b[^a-z]*(?:used|is)?[^a-z]*([a-z]+)");

  static PlacementTable of(String file, String text, PlacementColumns columns) {
    PlacementTable best = null;
    PlacementException firstProblem = null;
    for (char delimiter : DELIMITERS) {
      try {
        PlacementTable table =
            find(
                DelimitedText.rows(
                    text,
                    delimiter,
                    (line, column, message) -> new PlacementException(file, line, column, message)),
                columns);
        if (table != null && (best == null || table.index.size() > best.index.size())) {
          best = table;
        }
      } catch (PlacementException e) {
        firstProblem = firstProblem == null ? e : firstProblem;
      }
    }
    if (best != null) {
      return best;
    }
    if (firstProblem != null) {
      throw firstProblem;
    }
    throw new PlacementException(
        file,
        1,
        1,
        "no header line with a reference, an X and a Y column in the first "
            + HEADER_WITHIN
            + " lines; name them under 'columns' in the board file");
  }

  private static PlacementTable find(List<List<Cell>> rows, PlacementColumns columns) {
    for (int i = 0; i < Math.min(rows.size(), HEADER_WITHIN); i++) {
      List<Cell> headers = withoutMark(rows.get(i));
      Map<Field, Integer> index = new EnumMap<>(Field.class);
      for (Field field : Field.values()) {
        int at = columns.find(field, headers);
        if (at >= 0) {
          index.put(field, at);
        }
      }
      if (index.containsKey(Field.REFERENCE)
          && index.containsKey(Field.X)
          && index.containsKey(Field.Y)) {
        List<List<Cell>> below =
            rows.subList(i + 1, rows.size()).stream().filter(row -> !isComment(row)).toList();
        return new PlacementTable(headers, index, below, statedUnit(rows.subList(0, i)));
      }
    }
    return null;
  }

  /** The header of a commented table starts with a mark of its own. */
  private static List<Cell> withoutMark(List<Cell> row) {
    Cell first = row.get(0);
    List<Cell> cells = new ArrayList<>(row);
    if (first.text().equals("#")) {
      cells.remove(0);
    } else if (first.text().startsWith("#")) {
      cells.set(0, new Cell(first.text().substring(1).strip(), first.line(), first.column() + 1));
    }
    return cells.isEmpty() ? row : cells;
  }

  private static boolean isComment(List<Cell> row) {
    return row.get(0).text().startsWith("#");
  }

  private static Optional<LengthUnit> statedUnit(List<List<Cell>> above) {
    for (List<Cell> row : above) {
      StringBuilder line = new StringBuilder();
      row.forEach(cell -> line.append(cell.text()).append(' '));
      Matcher matcher = UNIT_LINE.matcher(line.toString().toLowerCase(Locale.ROOT));
      if (matcher.find()) {
        Optional<LengthUnit> unit = LengthUnit.named(matcher.group(1));
        if (unit.isPresent()) {
          return unit;
        }
      }
    }
    return Optional.empty();
  }

  /** The unit in a header's brackets, as in {@code Center-X(mm)}. */
  Optional<LengthUnit> headerUnit(Field field) {
    String header = headers.get(index.get(field)).text();
    Matcher matcher = Pattern.compile("[(\\[]\\s*([A-Za-z\"]+)\\s*[)\\]]").matcher(header);
    return matcher.find() ? LengthUnit.named(matcher.group(1)) : Optional.empty();
  }
}
