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
    boolean inside = false;
    for (String line : Files.readAllLines(document)) {
      if (line.equals("<!-- end " + marker + " -->")) {
        rows.forEach(row -> out.add(printable(row)));
        inside = false;
      }
      // The table's head, two lines, stays.
      if (!inside || line.startsWith("| ---") || line.startsWith("| fault")) {
        out.add(line);
      }
      if (line.equals("<!-- begin " + marker + " -->")) {
        inside = true;
      }
    }
    Files.write(document, out);
  }

  private static String printable(String row) {
    return row.replaceAll("[^ -~]", "?");
  }
}
