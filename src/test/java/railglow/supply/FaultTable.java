package railglow.supply;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Puts rows of a table into a document, between its markers. */
final class FaultTable {
  private FaultTable() {}

  /** Does nothing unless the property {@code fault.table} names the document. */
  static void write(String marker, List<String> rows) throws IOException {
    String path = System.getProperty("fault.table", "");
    if (path.isEmpty()) {
      return;
    }
    Path document = Path.of(path);
    List<String> out = new ArrayList<>();
    int inside = 0;
    for (String line : Files.readAllLines(document)) {
      if (line.equals("<!-- end " + marker + " -->")) {
        rows.forEach(row -> out.add(printable(row)));
        inside = 0;
      }
      // The table's head, two lines, stays.
      if (inside < 3) {
        out.add(line);
      }
      inside += inside > 0 ? 1 : 0;
      if (line.equals("<!-- begin " + marker + " -->")) {
        inside = 1;
      }
    }
    Files.write(document, out);
  }

  private static String printable(String row) {
    return row.replaceAll("[^ -~]", "?").replaceAll(" +", " ");
  }
}
