package railglow.casebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.sql.Driver;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DatabaseDriversTest {
  @TempDir Path runs;

  @Test
  void aCatalogueOpensWhereThePlatformsRegisterOfDriversIsEmpty() throws Exception {
    List<Driver> registered = Collections.list(DriverManager.getDrivers());
    try {
      for (Driver driver : registered) {
        DriverManager.deregisterDriver(driver);
      }
      try (Catalogue catalogue = Catalogue.besideRuns(runs)) {
        assertEquals(0, catalogue.find(RunSearch.ALL).size());
      }
    } finally {
      for (Driver driver : registered) {
        DriverManager.registerDriver(driver);
      }
    }
  }

  @Test
  void anAddressOfAnotherKindOfDatabaseIsRefusedWithTheKindsThatThereAre() {
    SQLException refusal =
        assertThrows(
            SQLException.class, () -> DatabaseDrivers.connect("jdbc:other:somewhere", "", ""));
    assertTrue(refusal.getMessage().contains("jdbc:postgresql"), refusal.getMessage());
  }
}
