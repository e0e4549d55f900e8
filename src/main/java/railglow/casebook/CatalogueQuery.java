package railglow.casebook;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import railglow.journal.Findings;

/** The questions asked of a catalogue; every value is a parameter of its statement. Stateless. */
final class CatalogueQuery {
  private CatalogueQuery() {}

  static List<RunSummary> find(Connection connection, RunSearch search) throws SQLException {
    List<Object> values = new ArrayList<>();
    StringBuilder where = new StringBuilder(" WHERE 1 = 1");
    contains(where, values, "LOWER(board)", search.board());
    equal(where, values, "LOWER(rail)", search.rail().toLowerCase(Locale.ROOT));
    equal(where, values, "verdict", search.verdict());
    if (!search.part().isEmpty()) {
      where.append(" AND run_key IN (SELECT run_key FROM suspects WHERE part_key = ?)");
      values.add(search.part().toLowerCase(Locale.ROOT));
    }
    if (search.from() != null) {
      where.append(" AND started >= ?");
      values.add(Timestamp.from(search.from()));
    }
    if (search.until() != null) {
      where.append(" AND started < ?");
      values.add(Timestamp.from(search.until()));
    }
    for (String word : search.words()) {
      contains(where, values, "words", word);
    }
    List<RunSummary> found = new ArrayList<>();
    try (PreparedStatement query =
        connection.prepareStatement(
            "SELECT run_id, folder, started, board, rail, verdict, headline, rail_ohms, ending,"
                + " words, run_key FROM runs"
                + where
                + " ORDER BY started DESC, run_id DESC LIMIT "
                + Math.max(1, search.most()))) {
      for (int i = 0; i < values.size(); i++) {
        query.setObject(i + 1, values.get(i));
      }
      try (ResultSet rows = query.executeQuery()) {
        while (rows.next()) {
          RunSummary run = summary(rows, suspects(connection, rows.getString(11)));
          found.add(run);
        }
      }
    }
    return List.copyOf(found);
  }

  static List<FaultCount> faults(Connection connection, String board) throws SQLException {
    List<FaultCount> counts = new ArrayList<>();
    String from =
        " FROM runs r JOIN suspects s ON s.run_key = r.run_key AND s.place = 1"
            + " WHERE r.verdict = ? AND LOWER(r.board) LIKE ? ESCAPE '!'";
    try (PreparedStatement query =
        connection.prepareStatement(
            "SELECT r.rail, s.part, COUNT(*), SUM(COUNT(*)) OVER (PARTITION BY r.rail)"
                + from
                + " GROUP BY r.rail, s.part ORDER BY r.rail, COUNT(*) DESC, s.part")) {
      query.setString(1, Findings.Verdict.HEAT_FOUND.name());
      query.setString(2, pattern(board));
      try (ResultSet rows = query.executeQuery()) {
        while (rows.next()) {
          counts.add(
              new FaultCount(rows.getString(1), rows.getString(2), rows.getInt(3), rows.getInt(4)));
        }
      }
    }
    return counts;
  }

  private static RunSummary summary(ResultSet row, List<String> suspects) throws SQLException {
    return new RunSummary(
        row.getString(1),
        Path.of(row.getString(2)),
        row.getTimestamp(3).toInstant(),
        row.getString(4),
        row.getString(5),
        row.getString(6),
        row.getString(7),
        suspects,
        row.getDouble(8),
        row.getString(9),
        row.getString(10));
  }

  private static List<String> suspects(Connection connection, String key) throws SQLException {
    List<String> suspects = new ArrayList<>();
    try (PreparedStatement query =
        connection.prepareStatement("SELECT part FROM suspects WHERE run_key = ? ORDER BY place")) {
      query.setString(1, key);
      try (ResultSet rows = query.executeQuery()) {
        while (rows.next()) {
          suspects.add(rows.getString(1));
        }
      }
    }
    return suspects;
  }

  private static void equal(StringBuilder where, List<Object> values, String column, String value) {
    if (!value.isEmpty()) {
      where.append(" AND ").append(column).append(" = ?");
      values.add(value);
    }
  }

  private static void contains(
      StringBuilder where, List<Object> values, String column, String value) {
    if (!value.isEmpty()) {
      where.append(" AND ").append(column).append(" LIKE ? ESCAPE '!'");
      values.add(pattern(value));
    }
  }

  /** Any text with this one in it, whatever LIKE makes of its characters. */
  private static String pattern(String value) {
    return "%" + value.toLowerCase(Locale.ROOT).replaceAll("([!%_])", "!$1") + "%";
  }
}
