package railglow.board.ladder;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import railglow.board.imports.Cell;
import railglow.board.imports.DelimitedText;
import railglow.board.imports.TextBytes;
import railglow.units.Quantity;
import railglow.units.QuantityException;
import railglow.units.Unit;

/**
 * Reads a table of ladder steps: columns {@code voltage} and {@code current} at the board, and
 * where known {@code voltage-error}, {@code current-error}, {@code drift}, {@code drift-error},
 * {@code constant-current} (yes or no). Every number with its unit. Total.
 */
public final class StepsReader {
  /** What bench supplies read back to, where the table does not say; common practice, no source. */
  private static final double USUAL_SHARE = 0.002;

  private static final double USUAL_VOLTS = 1e-3;
  private static final double USUAL_AMPERES = 1e-3;
  private static final double MOST_VOLTS = 60;
  private static final double MOST_AMPERES = 100;
  private static final List<String> COLUMNS =
      List.of(
          "voltage",
          "current",
          "voltage-error",
          "current-error",
          "drift",
          "drift-error",
          "constant-current");

  private final String file;
  private boolean supposed;
  private final Map<String, Integer> columns = new TreeMap<>();

  private StepsReader(String file) {
    this.file = file;
  }

  /**
   * @param file its name, for messages
   * @return in the order they were taken
   * @throws LadderException for anything that is no such table
   */
  public static List<LadderStep> read(String file, byte[] bytes) {
    return table(file, bytes).steps();
  }

  /** As {@link #read}, with where the steps' errors are known from. */
  public static Table table(String file, byte[] bytes) {
    StepsReader reader = new StepsReader(file);
    List<LadderStep> steps = reader.read(TextBytes.decode(bytes));
    return new Table(steps, reader.supposed);
  }

  /**
   * What a table says.
   *
   * @param steps in the order they were taken
   * @param errorsSupposed whether some step's error is the usual one because the table states none
   */
  public record Table(List<LadderStep> steps, boolean errorsSupposed) {
    public Table {
      steps = List.copyOf(steps);
    }

    /** One sentence for the operator on how well each step is known. */
    public String errors() {
      return errorsSupposed
          ? String.format(
              Locale.ROOT,
              "where the table states none, a step is taken to %s and %s and %.1f %% of the value"
                  + " (supposed: common practice, no source).",
              Quantity.format(USUAL_VOLTS, Unit.VOLT),
              Quantity.format(USUAL_AMPERES, Unit.AMPERE),
              100 * USUAL_SHARE)
          : "of each step as the table states them.";
    }
  }

  private List<LadderStep> read(String text) {
    char delimiter = text.lines().findFirst().orElse("").indexOf(';') >= 0 ? ';' : ',';
    List<List<Cell>> rows =
        DelimitedText.rows(
            text,
            delimiter,
            (line, column, message) -> new LadderException(file, line, column, message));
    if (rows.isEmpty()) {
      throw new LadderException(file, 1, 1, "there is nothing in this file");
    }
    List<Cell> header = rows.get(0);
    for (int i = 0; i < header.size(); i++) {
      String name = header.get(i).text().toLowerCase(Locale.ROOT);
      if (!COLUMNS.contains(name) || columns.put(name, i) != null) {
        throw at(
            header.get(i),
            "'" + header.get(i).text() + "' is no column here, or is there twice; " + COLUMNS);
      }
    }
    if (!columns.containsKey("voltage") || !columns.containsKey("current")) {
      throw at(header.get(0), "the columns 'voltage' and 'current' must be there");
    }
    List<LadderStep> steps = new ArrayList<>();
    for (List<Cell> row : rows.subList(1, rows.size())) {
      if (!row.get(0).text().startsWith("#")) {
        steps.add(step(row));
      }
    }
    return steps;
  }

  private LadderStep step(List<Cell> row) {
    double volts = needed(row, "voltage", Unit.VOLT, MOST_VOLTS);
    double amperes = needed(row, "current", Unit.AMPERE, MOST_AMPERES);
    double stated = optional(row, "voltage-error", Unit.VOLT, MOST_VOLTS, Double.NaN);
    supposed |= Double.isNaN(stated) || isEmpty(row, "current-error");
    double voltsSigma =
        Double.isNaN(stated) ? Math.hypot(USUAL_VOLTS, USUAL_SHARE * volts) : stated;
    double amperesSigma =
        above(row, "current-error", Math.hypot(USUAL_AMPERES, USUAL_SHARE * amperes));
    return new LadderStep(
        volts,
        Math.abs(voltsSigma),
        amperes,
        amperesSigma,
        optional(row, "drift", Unit.AMPERE, MOST_AMPERES, 0),
        above(row, "drift-error", amperesSigma * Math.sqrt(2)),
        yes(row));
  }

  private double above(List<Cell> row, String column, double whenAbsent) {
    double value = optional(row, column, Unit.AMPERE, MOST_AMPERES, whenAbsent);
    if (!(value > 0)) {
      throw at(row.get(columns.get(column)), "an error of current must be above 0 A");
    }
    return value;
  }

  private double needed(List<Cell> row, String column, Unit unit, double most) {
    double value = optional(row, column, unit, most, Double.NaN);
    if (Double.isNaN(value)) {
      throw at(row.get(row.size() - 1), "this row has no " + column);
    }
    return value;
  }

  private double optional(
      List<Cell> row, String column, Unit unit, double most, double whenAbsent) {
    if (isEmpty(row, column)) {
      return whenAbsent;
    }
    int at = columns.get(column);
    try {
      double value = Quantity.parse(row.get(at).text(), unit);
      if (Math.abs(value) > most) {
        throw at(
            row.get(at), "'" + row.get(at).text() + "' is beyond " + Quantity.format(most, unit));
      }
      return value;
    } catch (QuantityException e) {
      throw at(row.get(at), e.getMessage());
    }
  }

  private boolean isEmpty(List<Cell> row, String column) {
    Integer at = columns.get(column);
    return at == null || at >= row.size() || row.get(at).text().isEmpty();
  }

  private boolean yes(List<Cell> row) {
    if (isEmpty(row, "constant-current")) {
      return false;
    }
    int at = columns.get("constant-current");
    return switch (row.get(at).text().toLowerCase(Locale.ROOT)) {
      case "yes" -> true;
      case "no" -> false;
      default -> throw at(row.get(at), "'" + row.get(at).text() + "' is neither yes nor no");
    };
  }

  private LadderException at(Cell cell, String message) {
    return new LadderException(file, cell.line(), cell.column(), message);
  }
}
