package railglow.supply;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

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

  /**
   * A row on a fault of the program itself.
   *
   * @param offMillis NaN where the fault has no moment
   * @param told what the operator reads last
   */
  static String processRow(
      String fault, double offMillis, boolean trulyOn, int exitCode, String told) {
    return String.format(
        Locale.ROOT,
        "| %s | %s | %s | %s | %s | %d | %s |",
        fault,
        cause(told),
        Double.isNaN(offMillis) ? "-" : String.format(Locale.ROOT, "%.0f ms", offMillis),
        told.contains("output proven off")
            ? "PROVEN_OFF"
            : told.contains("NOT PROVEN OFF") ? "UNKNOWN" : "-",
        trulyOn ? "on" : "off",
        exitCode,
        told.replace("|", "/"));
  }

  /** As the program's last sentence says it. */
  private static String cause(String told) {
    Matcher said = Pattern.compile("^Stopped +([a-z ]+),").matcher(told);
    if (said.find()) {
      return said.group(1).toUpperCase(Locale.ROOT).replace(' ', '_');
    }
    return told.startsWith("Ended") ? "PROGRAMME_FINISHED" : "-";
  }
}
