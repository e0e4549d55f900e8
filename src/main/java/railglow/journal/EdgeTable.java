package railglow.journal;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * When a supply was switched, as a table made elsewhere: columns {@code time_s} and {@code state}
 * (ON or OFF), times ascending, states alternating; a first row may repeat the state before. On the
 * clock of the frames' table.
 */
public final class EdgeTable {
  private static final double NANOS = 1e9;

  private EdgeTable() {}

  /**
   * One row.
   *
   * @param nanos after the table's zero
   */
  public record Row(long nanos, boolean on) {}

  /**
   * Reads a table.
   *
   * @return at least one row
   * @throws JournalException with file, line and value
   */
  public static List<Row> read(Path file) throws IOException {
    CsvTable table = CsvTable.read(file);
    int time = table.require("time_s");
    int state = table.require("state");
    List<Row> rows = new ArrayList<>();
    for (int i = 0; i < table.rows(); i++) {
      double seconds = table.number(i, time);
      if (Math.abs(seconds) > 1e8) {
        throw table.error(i, time, seconds + " s is outside -1e8 s to 1e8 s");
      }
      boolean on = table.text(i, state).equals("ON");
      if (!on && !table.text(i, state).equals("OFF")) {
        throw table.error(i, state, "'" + table.text(i, state) + "' is neither ON nor OFF");
      }
      Row row = new Row(Math.round(seconds * NANOS), on);
      if (!rows.isEmpty()) {
        Row before = rows.get(rows.size() - 1);
        if (row.nanos() <= before.nanos()) {
          throw table.error(i, time, "the time is not after that of the row before");
        }
        if (row.on() == before.on()) {
          throw table.error(i, state, "the output is " + (on ? "ON" : "OFF") + " already");
        }
      }
      rows.add(row);
    }
    if (rows.isEmpty()) {
      throw new JournalException(file + ":2: the table has no rows");
    }
    return List.copyOf(rows);
  }
}
