package railglow.casebook;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;

/** The shared catalogue on a PostgreSQL server of this test's own; skipped where there is none. */
class PostgresCatalogueTest extends CatalogueContract {
  private static Path programs;
  private static Path data;
  private static int port;

  @BeforeAll
  static void startServer() throws Exception {
    programs = programs();
    assumeTrue(programs != null, "no PostgreSQL server is installed here");
    assumeTrue(
        !System.getProperty("user.name").equals("root") || run("su", "postgres", "-c", "true") == 0,
        "PostgreSQL refuses to run as root, and there is no user postgres");
    data = Files.createTempDirectory(Path.of("/tmp"), "railglow-pg");
    if (System.getProperty("user.name").equals("root")) {
      run("chown", "postgres", data.toString());
    }
    try (ServerSocket free = new ServerSocket(0)) {
      port = free.getLocalPort();
    }
    assumeTrue(
        asServer(programs.resolve("initdb") + " -D " + data + " -U railglow -A trust -N -E UTF8")
            == 0,
        "initdb does not work here");
    assumeTrue(
        asServer(
                programs.resolve("pg_ctl")
                    + " -D "
                    + data
                    + " -w -t 20 -l "
                    + data.resolve("log")
                    + " -o '-p "
                    + port
                    + " -c listen_addresses=127.0.0.1 -c unix_socket_directories="
                    + data
                    + " -c fsync=off' start")
            == 0,
        "the server does not start here");
  }

  @AfterAll
  static void stopServer() throws Exception {
    if (data != null) {
      asServer(programs.resolve("pg_ctl") + " -D " + data + " -m immediate -w stop");
      try (Stream<Path> files = Files.walk(data)) {
        for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
          Files.deleteIfExists(file);
        }
      }
    }
  }

  @Override
  void empty() throws Exception {
    try (Connection connection = DriverManager.getConnection(address(), "railglow", "");
        Statement statement = connection.createStatement()) {
      statement.execute("DROP TABLE IF EXISTS suspects");
      statement.execute("DROP TABLE IF EXISTS runs");
    }
  }

  @Override
  Catalogue open(Path place) throws Exception {
    return Catalogue.open(address(), "railglow", "");
  }

  private static String address() {
    return "jdbc:postgresql://127.0.0.1:" + port + "/postgres";
  }

  private static Path programs() throws IOException {
    Path versions = Path.of("/usr/lib/postgresql");
    if (!Files.isDirectory(versions)) {
      return null;
    }
    try (Stream<Path> list = Files.list(versions)) {
      return list.map(version -> version.resolve("bin"))
          .filter(bin -> Files.isExecutable(bin.resolve("initdb")))
          .findFirst()
          .orElse(null);
    }
  }

  private static int asServer(String command) throws Exception {
    return System.getProperty("user.name").equals("root")
        ? run("su", "postgres", "-c", command)
        : run("sh", "-c", command);
  }

  private static int run(String... command) throws Exception {
    Path output = Files.createTempFile("railglow-pg", ".txt");
    try {
      Process process =
          new ProcessBuilder(List.of(command))
              .redirectErrorStream(true)
              .redirectOutput(output.toFile())
              .start();
      if (!process.waitFor(40, TimeUnit.SECONDS)) {
        process.destroyForcibly();
        return -1;
      }
      return process.exitValue();
    } finally {
      Files.delete(output);
    }
  }
}
