package railglow.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;

/**
 * Listens to the standard input on a thread of its own: Enter, or a pedal that acts as that key, is
 * a press; {@code q} and the end of the input are the end.
 */
final class Keys {
  private Keys() {}

  static void listen(InputStream in, Runnable press, Runnable end) {
    Thread thread = new Thread(() -> read(in, press, end), "keys");
    thread.setDaemon(true);
    thread.start();
  }

  private static void read(InputStream in, Runnable press, Runnable end) {
    BufferedReader reader = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8));
    try {
      for (String line = reader.readLine(); line != null; line = reader.readLine()) {
        if (line.strip().equalsIgnoreCase("q")) {
          break;
        }
        press.run();
      }
    } catch (IOException e) {
      // An input that can't be read any more is at its end.
    }
    end.run();
  }
}
