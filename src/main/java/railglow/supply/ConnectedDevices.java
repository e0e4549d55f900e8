package railglow.supply;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.TreeSet;

/** The device files of this machine behind which an instrument may be. */
public final class ConnectedDevices {
  private static final List<String> SERIAL = List.of("ttyUSB*", "ttyACM*", "ttyS[0-9]*");

  private ConnectedDevices() {}

  /**
   * Addresses in the form {@link SupplyAddress#parse} reads; nothing is opened.
   *
   * @param devices the folder of device files, {@code /dev}
   */
  public static List<String> addresses(Path devices) throws IOException {
    TreeSet<String> found = new TreeSet<>();
    add(found, devices, "usbtmc[0-9]*", "usbtmc:");
    for (String pattern : SERIAL) {
      add(found, devices, pattern, "serial:");
    }
    return List.copyOf(found);
  }

  private static void add(TreeSet<String> found, Path devices, String pattern, String scheme)
      throws IOException {
    if (!Files.isDirectory(devices)) {
      return;
    }
    try (DirectoryStream<Path> files = Files.newDirectoryStream(devices, pattern)) {
      for (Path file : files) {
        found.add(scheme + file);
      }
    }
  }
}
