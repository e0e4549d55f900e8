package railglow.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.function.Consumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Listens to the standard input on a thread of its own: Enter, or a pedal that acts as that key, is
 * a press; {@code q} and the end of the input are the end.
 */
final class Keys {
  private static final Logger LOG = LoggerFactory.getLogger(Keys.class);

  private Keys() {}

  static void listen(InputStream in, Runnable press, Runnable end) {
    Thread thread = new Thread(() -> read(in, press, end), "keys");
    thread.setDaemon(true);
    thread.start();
  }

  /**
   * As {@link #listen}, but hands each line on, and the end of the input ends nothing.
   *
   * @param line told without its line end; empty for Enter alone
   */
  static void lines(InputStream in, Consumer<String> line, Runnable quit) {
    Thread thread = new Thread(() -> readLines(in, line, quit), "keys");
    thread.setDaemon(true);
    thread.start();
  }

  private static void readLines(InputStream in, Consumer<String> each, Runnable quit) {
    BufferedReader reader = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8));
    try {
      for (String line = reader.readLine(); line != null; line = reader.readLine()) {
        if (line.strip().equalsIgnoreCase("q")) {
          quit.run();
          return;
        }
        each.accept(line.strip());
      }
    } catch (IOException e) {
      LOG.info("the input can't be read any more: {}", e.toString());
    }
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
      LOG.info("the input can't be read any more, so it is at its end: {}", e.toString());
    }
    end.run();
  }
}
