package railglow.casebook;

import java.sql.Connection;
import java.sql.Driver;
import java.sql.SQLException;
import java.util.Properties;
import java.util.ServiceLoader;

/**
 * The database drivers of the program's own class path. The platform's register of drivers is
 * filled once, with what the first thread that asks happens to see; a program started within
 * another finds it empty.
 */
final class DatabaseDrivers {
  private DatabaseDrivers() {}

  /**
   * @param address a JDBC address
   * @param user empty: none is told to the database
   * @throws SQLException when no driver knows the address, or the database can't be reached
   */
  static Connection connect(String address, String user, String password) throws SQLException {
    Properties login = new Properties();
    if (!user.isEmpty()) {
      login.setProperty("user", user);
      login.setProperty("password", password);
    }
    ClassLoader ours = DatabaseDrivers.class.getClassLoader();
    for (Driver driver : ServiceLoader.load(Driver.class, ours)) {
      Connection connection = driver.acceptsURL(address) ? driver.connect(address, login) : null;
      if (connection != null) {
        return connection;
      }
    }
    throw new SQLException("no driver for this kind of address; jdbc:h2: and jdbc:postgresql: are");
  }
}
