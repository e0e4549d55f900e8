package railglow.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import railglow.board.Board;
import railglow.board.Rail;
import railglow.board.imports.ImportException;
import railglow.board.readings.RailReading;
import railglow.board.readings.ReadingsReader;
import railglow.board.readings.ReadingsTable;
import railglow.config.ConfigException;
import railglow.config.ConfigFile;
import railglow.report.OhmReading;
import railglow.units.Interval;
import railglow.units.Quantity;
import railglow.units.Unit;

/**
 * One board's visit as it is kept: {@code readings.csv} holds the newest reading of each rail,
 * {@code first-readings.csv} the first one, {@code verdict.yaml} how it ended.
 *
 * @param root the folder
 */
record CaseFolder(Path root) {
  private static final int MOST_RAILS = 5;

  Path readings() {
    return root.resolve("readings.csv");
  }

  private Path firstReadings() {
    return root.resolve("first-readings.csv");
  }

  /** Keeps the newest readings, and those of rails that were never read before as their first. */
  void keep(List<RailReading> readings) throws IOException, UserMistake {
    Files.createDirectories(root);
    List<RailReading> before =
        Files.exists(firstReadings())
            ? read(firstReadings())
            : Files.exists(readings()) ? read(readings()) : List.of();
    Files.writeString(
        firstReadings(), ReadingsTable.csv(ReadingsTable.corrected(readings, before)));
    Files.writeString(readings(), ReadingsTable.csv(readings));
  }

  static List<RailReading> read(Path table) throws IOException, UserMistake {
    if (!Files.isRegularFile(table)) {
      throw new UserMistake("there is no table of readings " + table);
    }
    try {
      return ReadingsReader.read(table.toString(), Files.readAllBytes(table));
    } catch (ImportException e) {
      throw new UserMistake(e.getMessage());
    }
  }

  /**
   * The injected rail, and those others that were read again: before and after. So many as the
   * owner's one page has room for.
   *
   * @param board for what is normal; null when not known
   */
  List<OhmReading> beforeAndAfter(Board board, String injected) throws IOException, UserMistake {
    List<RailReading> newest = read(readings());
    List<RailReading> first = Files.exists(firstReadings()) ? read(firstReadings()) : newest;
    List<OhmReading> rows = new ArrayList<>();
    for (RailReading reading : first) {
      if (rows.stream().anyMatch(row -> row.rail().equalsIgnoreCase(reading.rail()))) {
        continue; // read in both polarities: the first one stands for it
      }
      double after =
          newest.stream()
              .filter(n -> n.rail().equalsIgnoreCase(reading.rail()) && !n.equals(reading))
              .findFirst()
              .map(RailReading::railOhms)
              .orElse(Double.NaN);
      OhmReading row =
          new OhmReading(reading.rail(), reading.railOhms(), normal(board, reading.rail()), after);
      if (reading.rail().equalsIgnoreCase(injected)) {
        rows.add(0, row);
      } else if (!Double.isNaN(after)) {
        rows.add(row);
      }
    }
    return rows.subList(0, Math.min(MOST_RAILS, rows.size()));
  }

  /** What was decided, in words for the owner; empty while the case is open. */
  Optional<String> verdict() throws ConfigException {
    Path file = root.resolve("verdict.yaml");
    return Files.isRegularFile(file)
        ? Optional.of(ConfigFile.read(file).root().text("statement"))
        : Optional.empty();
  }

  /** What a rail of the board should read; empty when not known. */
  static String normal(Board board, String rail) {
    return board == null
        ? ""
        : board.rail(rail).flatMap(Rail::normalOhms).map(CaseFolder::words).orElse("");
  }

  private static String words(Interval normal) {
    String low = Quantity.format(normal.low(), Unit.OHM);
    return Double.isInfinite(normal.high())
        ? low + " or more"
        : low + " to " + Quantity.format(normal.high(), Unit.OHM);
  }
}
