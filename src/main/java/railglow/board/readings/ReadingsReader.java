package railglow.board.readings;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import railglow.board.imports.Cell;
import railglow.board.imports.DelimitedText;
import railglow.board.imports.TextBytes;
import railglow.board.readings.RailReading.Polarity;
import railglow.units.Quantity;
import railglow.units.QuantityException;
import railglow.units.Unit;

/**
 * Reads a table of resistance readings: columns {@code rail} and {@code reading}, and where wanted
 * {@code leads}, {@code level}, {@code polarity}, {@code error}; commas or semicolons; every number
 * with its unit, {@code OL} or {@code open} for an overload. Total: a list or the exception that
 * names the place.
 */
public final class ReadingsReader {
  private static final double MOST_OHMS = 1e9;
  private static final double MOST_LEAD_OHMS = 100;
  private static final double MOST_VOLTS = 60;

  private final String file;
  private Map<String, Integer> columns;

  private ReadingsReader(String file) {
    this.file = file;
  }

  /**
   * @param file its name, for messages
   * @throws ReadingsException for anything that is no such table
   */
  public static List<RailReading> read(String file, byte[] bytes) {
    return new ReadingsReader(file).read(TextBytes.decode(bytes));
  }

  /**
   * One reading from words such as {@code 3V3=6.8 ohm}, as given on a command line.
   *
   * @throws ReadingsException when it is not such a reading; the line is 1
   */
  public static RailReading parse(String text, double leadOhms) {
    int equals = text.indexOf('=');
    if (equals < 1) {
      throw new ReadingsException(
          text, 1, 1, "write a reading as RAIL=RESISTANCE, for example '3V3=6.8 ohm'");
    }
    double ohms =
        new ReadingsReader(text).ohms(new Cell(text.substring(equals + 1).strip(), 1, equals + 2));
    return RailReading.ofMeter(text.substring(0, equals).strip(), ohms, leadOhms);
  }

  private List<RailReading> read(String text) {
    char delimiter = text.lines().findFirst().orElse("").indexOf(';') >= 0 ? ';' : ',';
    List<List<Cell>> rows =
        DelimitedText.rows(
            text,
            delimiter,
            (line, column, message) -> new ReadingsException(file, line, column, message));
    if (rows.isEmpty()) {
      throw new ReadingsException(file, 1, 1, "there is nothing in this file");
    }
    columns = new TreeMap<>();
    for (int i = 0; i < rows.get(0).size(); i++) {
      Cell header = rows.get(0).get(i);
      String name = header.text().toLowerCase(Locale.ROOT);
      if (!List.of("rail", "reading", "leads", "level", "polarity", "error").contains(name)) {
        throw at(
            header,
            "'"
                + header.text()
                + "' is no column of readings; rail, reading, leads, level, polarity and error are");
      }
      columns.put(name, i);
    }
    if (!columns.containsKey("rail") || !columns.containsKey("reading")) {
      throw at(rows.get(0).get(0), "the columns 'rail' and 'reading' must be there");
    }
    List<RailReading> readings = new ArrayList<>();
    for (List<Cell> row : rows.subList(1, rows.size())) {
      if (!row.get(0).text().startsWith("#")) {
        readings.add(reading(row));
      }
    }
    return readings;
  }

  private RailReading reading(List<Cell> row) {
    for (int i = columns.size(); i < row.size(); i++) {
      if (!row.get(i).text().isEmpty()) {
        throw at(row.get(i), "this row has more cells than the header");
      }
    }
    Cell rail = cell(row, "rail");
    if (rail.text().isEmpty()) {
      throw at(rail, "this row names no rail");
    }
    Cell reading = cell(row, "reading");
    RailReading read =
        RailReading.ofMeter(
            rail.text(),
            ohms(reading),
            optional(row, "leads", Unit.OHM, MOST_LEAD_OHMS, 0),
            optional(row, "level", Unit.VOLT, MOST_VOLTS, Double.NaN),
            polarity(row));
    double error = optional(row, "error", Unit.OHM, MOST_OHMS, read.sigmaOhms());
    if (!(error > 0)) {
      throw at(row.get(columns.get("error")), "an error of a reading must be above 0 ohm");
    }
    return read.withSigma(error);
  }

  private double ohms(Cell cell) {
    String text = cell.text().toLowerCase(Locale.ROOT);
    if (text.equals("ol") || text.equals("o.l") || text.equals("open")) {
      return Double.POSITIVE_INFINITY;
    }
    return quantity(cell, Unit.OHM, MOST_OHMS);
  }

  private Polarity polarity(List<Cell> row) {
    Integer at = columns.get("polarity");
    if (at == null || at >= row.size() || row.get(at).text().isEmpty()) {
      return Polarity.NOT_SAID;
    }
    Cell cell = row.get(at);
    return switch (cell.text().toLowerCase(Locale.ROOT)) {
      case "positive", "+", "normal", "red" -> Polarity.POSITIVE;
      case "negative", "-", "reversed", "black" -> Polarity.NEGATIVE;
      default ->
          throw at(
              cell,
              "'" + cell.text() + "' is no polarity; 'positive' (as in use) and 'negative' are");
    };
  }

  private double optional(
      List<Cell> row, String column, Unit unit, double most, double whenAbsent) {
    Integer at = columns.get(column);
    if (at == null || at >= row.size() || row.get(at).text().isEmpty()) {
      return whenAbsent;
    }
    return quantity(row.get(at), unit, most);
  }

  private double quantity(Cell cell, Unit unit, double most) {
    try {
      double value = Quantity.parse(cell.text(), unit);
      if (value < 0 || value > most) {
        throw at(
            cell, "'" + cell.text() + "' is out of range: 0 to " + Quantity.format(most, unit));
      }
      return value;
    } catch (QuantityException e) {
      throw at(cell, e.getMessage());
    }
  }

  private Cell cell(List<Cell> row, String column) {
    int at = columns.get(column);
    if (at >= row.size()) {
      throw at(row.get(row.size() - 1), "this row ends before its column '" + column + "'");
    }
    return row.get(at);
  }

  private ReadingsException at(Cell cell, String message) {
    return new ReadingsException(file, cell.line(), cell.column(), message);
  }
}
