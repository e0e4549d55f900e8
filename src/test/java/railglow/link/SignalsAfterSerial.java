package railglow.link;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** A process that tries a serial port and prints which signals it ignored before and after. */
final class SignalsAfterSerial {
  private SignalsAfterSerial() {}

  /**
   * @param args the port
   */
  public static void main(String[] args) throws IOException {
    System.out.println(ignored());
    try {
      new SerialPortWay(SerialLine.usual(args[0], 9600)).open();
    } catch (CannotOpenException e) {
      // the library is loaded by now
    }
    System.out.println(ignored());
  }

  private static String ignored() throws IOException {
    return Files.readAllLines(Path.of("/proc/self/status")).stream()
        .filter(line -> line.startsWith("SigIgn"))
        .findFirst()
        .orElseThrow();
  }
}
