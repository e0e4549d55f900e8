package railglow.casebook;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.sql.Timestamp;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.IntConsumer;
import railglow.journal.Damage;
import railglow.journal.RunFolder;

/**
 * All runs of a shop, found again quickly. Holds nothing that is not in the run folders: it can be
 * thrown away and rebuilt from them. Several programs may write at once; each run is one
 * transaction. One instance is for one thread.
 */
public final class Catalogue implements AutoCloseable {
  private static final String[] TABLES = {
    "CREATE TABLE IF NOT EXISTS runs (run_key VARCHAR(300) PRIMARY KEY, run_id VARCHAR(200),"
        + " folder VARCHAR(4000), marker BIGINT,"
        + " started TIMESTAMP, board VARCHAR(400), rail VARCHAR(200), verdict VARCHAR(40),"
        + " headline VARCHAR(4000), rail_ohms DOUBLE PRECISION, ending VARCHAR(60),"
        + " words VARCHAR(20000))",
    "CREATE TABLE IF NOT EXISTS suspects (run_key VARCHAR(300) NOT NULL, place INTEGER NOT NULL,"
        + " part VARCHAR(200), part_key VARCHAR(200), PRIMARY KEY (run_key, place))",
    "CREATE INDEX IF NOT EXISTS runs_started ON runs (started)",
    "CREATE INDEX IF NOT EXISTS runs_folder ON runs (folder)",
    "CREATE INDEX IF NOT EXISTS runs_board ON runs (board, rail)",
    "CREATE INDEX IF NOT EXISTS suspects_part ON suspects (part_key)"
  };

  private final Connection connection;

  private Catalogue(Connection connection) {
    this.connection = connection;
  }

  /** The catalogue of one machine: a database file beside the runs. */
  public static Catalogue besideRuns(Path runs) throws CatalogueException {
    Path file = runs.toAbsolutePath().normalize().resolve(".catalogue");
    // AUTO_SERVER: the first program that opens the file serves the others
    return open("jdbc:h2:file:" + file + ";AUTO_SERVER=TRUE;LOCK_TIMEOUT=10000", "", "");
  }

  /**
   * Opens a catalogue by its JDBC address, for example {@code jdbc:postgresql://server/railglow}.
   */
  public static Catalogue open(String address, String user, String password)
      throws CatalogueException {
    try {
      Connection connection = DatabaseDrivers.connect(address, user, password);
      try (Statement statement = connection.createStatement()) {
        for (String table : TABLES) {
          statement.execute(table);
        }
      } catch (SQLException e) {
        connection.close();
        throw e;
      }
      connection.setAutoCommit(false);
      return new Catalogue(connection);
    } catch (SQLException e) {
      throw new CatalogueException(
          "the catalogue at "
              + address.replaceAll(";.*|\\?.*", "")
              + " can't be opened: "
              + firstLine(e)
              + "; it holds only what is in the run folders and can be rebuilt from them",
          e);
    }
  }

  /** Takes a run in, in place of what was kept of it before. */
  public void put(RunSummary run) throws CatalogueException {
    try {
      write(run);
      connection.commit();
    } catch (SQLException e) {
      throw failed(e);
    }
  }

  /**
   * Takes in what is new or changed among the folders and forgets runs whose folders are gone from
   * the place; runs of other places stay.
   *
   * @param runs the place
   * @param anew true to read every folder, whatever is kept of it
   * @param progress told how many folders are done
   * @return folders that could not be read, with the reason
   */
  public List<Damage> refresh(RunFolders runs, boolean anew, IntConsumer progress)
      throws CatalogueException, IOException {
    List<Damage> damages = new ArrayList<>();
    String prefix = runs.root().toAbsolutePath().normalize() + java.io.File.separator;
    try {
      Map<String, Long> kept = new HashMap<>();
      try (PreparedStatement query =
          connection.prepareStatement("SELECT folder, marker FROM runs")) {
        try (ResultSet rows = query.executeQuery()) {
          while (rows.next()) {
            if (rows.getString(1).startsWith(prefix)) {
              kept.put(rows.getString(1), rows.getLong(2));
            }
          }
        }
      }
      int done = 0;
      for (RunFolder folder : runs.list()) {
        String path = folder.root().toAbsolutePath().normalize().toString();
        Long marker = kept.remove(path);
        if (anew || marker == null || marker != marker(folder)) {
          try {
            forget(path);
            write(RunSummary.of(folder));
          } catch (IOException e) {
            damages.add(new Damage(folder.name(), 0, e.getMessage()));
          }
        }
        progress.accept(++done);
      }
      for (String gone : kept.keySet()) {
        forget(gone);
      }
      connection.commit();
    } catch (SQLException e) {
      throw failed(e);
    }
    return damages;
  }

  private void forget(String folder) throws SQLException {
    for (String statement :
        new String[] {
          "DELETE FROM suspects WHERE run_key IN (SELECT run_key FROM runs WHERE folder = ?)",
          "DELETE FROM runs WHERE folder = ?"
        }) {
      try (PreparedStatement delete = connection.prepareStatement(statement)) {
        delete.setString(1, folder);
        delete.executeUpdate();
      }
    }
  }

  /** Runs that fit, newest first. */
  public List<RunSummary> find(RunSearch search) throws CatalogueException {
    try {
      List<RunSummary> found = CatalogueQuery.find(connection, search);
      connection.rollback();
      return found;
    } catch (SQLException e) {
      throw failed(e);
    }
  }

  /** How often each part was the first suspect, by rail, for boards of a name. */
  public List<FaultCount> faults(String board) throws CatalogueException {
    try {
      List<FaultCount> counts = CatalogueQuery.faults(connection, board);
      connection.rollback();
      return counts;
    } catch (SQLException e) {
      throw failed(e);
    }
  }

  @Override
  public void close() throws CatalogueException {
    try {
      connection.close();
    } catch (SQLException e) {
      throw new CatalogueException("the catalogue can't be closed: " + firstLine(e), e);
    }
  }

  private void write(RunSummary run) throws SQLException {
    for (String table : new String[] {"suspects", "runs"}) {
      try (PreparedStatement delete =
          connection.prepareStatement("DELETE FROM " + table + " WHERE run_key = ?")) {
        delete.setString(1, run.key());
        delete.executeUpdate();
      }
    }
    try (PreparedStatement insert =
        connection.prepareStatement(
            "INSERT INTO runs VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)")) {
      insert.setString(1, cut(run.key(), 300));
      insert.setString(2, cut(run.runId(), 200));
      insert.setString(3, run.folder().toString());
      insert.setLong(4, marker(new RunFolder(run.folder())));
      insert.setTimestamp(5, Timestamp.from(run.started()));
      insert.setString(6, cut(run.board(), 400));
      insert.setString(7, cut(run.rail(), 200));
      insert.setString(8, run.verdict());
      insert.setString(9, cut(run.headline(), 4000));
      insert.setDouble(10, run.railOhms());
      insert.setString(11, run.ending());
      insert.setString(12, cut(run.text(), 20000));
      insert.executeUpdate();
    }
    try (PreparedStatement insert =
        connection.prepareStatement("INSERT INTO suspects VALUES (?, ?, ?, ?)")) {
      for (int i = 0; i < run.suspects().size(); i++) {
        insert.setString(1, cut(run.key(), 300));
        insert.setInt(2, i + 1);
        insert.setString(3, cut(run.suspects().get(i), 200));
        insert.setString(4, cut(run.suspects().get(i), 200).toLowerCase(Locale.ROOT));
        insert.addBatch();
      }
      insert.executeBatch();
    }
  }

  /** Changes when a run's journal or findings do; 0 for a folder that is gone. */
  private static long marker(RunFolder folder) {
    long marker = folder.journal().toFile().length();
    marker = 31 * marker + folder.findings().toFile().length();
    return 31 * marker + folder.findings().toFile().lastModified();
  }

  private CatalogueException failed(SQLException e) {
    try {
      connection.rollback();
    } catch (SQLException second) {
      e.addSuppressed(second);
    }
    return new CatalogueException("the catalogue did not take that: " + firstLine(e), e);
  }

  private static String cut(String text, int most) {
    String held = text.replace("\u0000", "");
    return held.length() <= most ? held : held.substring(0, most);
  }

  private static String firstLine(SQLException e) {
    return String.valueOf(e.getMessage()).lines().findFirst().orElse("no reason given");
  }
}
