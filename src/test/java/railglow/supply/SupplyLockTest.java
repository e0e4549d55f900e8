package railglow.supply;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SupplyLockTest {
  private static final Instant NOW = Instant.parse("2026-01-02T03:04:05Z");
  @TempDir Path folder;

  @Test
  void aSecondControllerIsRefusedWithTheNameOfTheFirst() throws IOException {
    SupplyAddress address = SupplyAddress.parse("tcp://127.0.0.1:5025");
    try (SupplyLock lock = SupplyLock.take(address, NOW, folder)) {
      SupplyInUseException e =
          assertThrows(
              SupplyInUseException.class,
              () -> SupplyLock.take(SupplyAddress.parse("tcp://localhost:5025"), NOW, folder));

      long pid = ProcessHandle.current().pid();
      assertTrue(
          e.getMessage().contains("driven by process " + pid + " since 2026-01-02T03:04:05Z"),
          e.getMessage());
      assertTrue(lock != null);
    }
  }

  @Test
  void aLockThatWasGivenBackCanBeTakenAgain() throws IOException {
    SupplyAddress address = SupplyAddress.parse("tcp://127.0.0.1:5025");
    SupplyLock.take(address, NOW, folder).close();

    SupplyLock.take(address, NOW, folder).close();
    SupplyLock.take(SupplyAddress.parse("tcp://127.0.0.1:5026"), NOW, folder).close();
  }

  @Test
  void twoNamesOfOneDeviceAreOneSupply() throws IOException {
    Path device = Files.createFile(folder.resolve("ttyUSB0"));
    Path alias = Files.createSymbolicLink(folder.resolve("supply"), device);
    try (SupplyLock lock = SupplyLock.take(SupplyAddress.parse("serial:" + device), NOW, folder)) {
      assertThrows(
          SupplyInUseException.class,
          () -> SupplyLock.take(SupplyAddress.parse("serial:" + alias), NOW, folder));
      assertTrue(lock != null);
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "tcp://192.0.2.7:5025",
        "bridge://box.example:4001",
        "serial:/dev/ttyUSB0",
        "serial:/dev/ttyUSB0?baud=19200",
        "usbtmc:/dev/usbtmc0"
      })
  void everyFormOfAddressIsRead(String text) {
    assertEquals(text, SupplyAddress.parse(text).toString());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "192.0.2.7",
        "tcp://192.0.2.7",
        "tcp://192.0.2.7:0",
        "tcp://192.0.2.7:70000",
        "tcp://192.0.2.7:5025/path",
        "serial:",
        "usbtmc:/dev/usbtmc0?baud=9600",
        "http://192.0.2.7:80"
      })
  void anythingElseIsRefusedWithTheRightForms(String text) {
    IllegalArgumentException e =
        assertThrows(IllegalArgumentException.class, () -> SupplyAddress.parse(text));

    assertTrue(e.getMessage().contains("write tcp://HOST:PORT"), e.getMessage());
  }
}
