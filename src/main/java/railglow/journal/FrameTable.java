package railglow.journal;

import java.io.IOException;
import java.nio.file.Path;

/**
 * When recorded frames were taken, as a table made elsewhere: a column {@code frame} (0, 1, 2 …)
 * and one of {@code t_ms}, {@code t_ms_host} (milliseconds) or {@code t_s} (seconds). Times never
 * go back; equal times are allowed, since bursts give them.
 */
public final class FrameTable {
  private FrameTable() {}

  /**
   * Reads a table.
   *
   * @return nanoseconds after the table's zero, one for each frame
   * @throws JournalException with file, line and value
   */
  public static long[] readNanos(Path file) throws IOException {
    CsvTable table = CsvTable.read(file);
    int frame = table.require("frame");
    int time = table.require("t_ms", "t_ms_host", "t_s");
    double nanosPerUnit = table.find("t_ms", "t_ms_host") >= 0 ? 1e6 : 1e9;
    long[] nanos = new long[table.rows()];
    for (int i = 0; i < nanos.length; i++) {
      if (table.number(i, frame) != i) {
        throw table.error(i, frame, "'" + table.text(i, frame) + "' where frame " + i + " is due");
      }
      double value = table.number(i, time) * nanosPerUnit;
      if (Math.abs(value) > 1e17) {
        throw table.error(i, time, "'" + table.text(i, time) + "' is outside -1e8 s to 1e8 s");
      }
      nanos[i] = Math.round(value);
      if (i > 0 && nanos[i] < nanos[i - 1]) {
        throw table.error(i, time, "'" + table.text(i, time) + "' is before the row above");
      }
    }
    if (nanos.length == 0) {
      throw new JournalException(file + ":2: the table has no rows");
    }
    return nanos;
  }
}
