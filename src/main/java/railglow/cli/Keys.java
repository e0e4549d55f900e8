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
 * Listens to the standard input on a thread of its own. Any key, or a pedal that acts as one, is a
 * press; {@code q} and the end of the input are the end; {@code 1} to {@code 9} name the next
 * point. Where the input comes in lines a longer word names it too.
 */
final class Keys {
  private static final Logger LOG = LoggerFactory.getLogger(Keys.class);
  private static final int END_OF_INPUT_KEY = 4;
  private static final int ESCAPE = 27;

  /** What the keys do; called on the keys' thread. */
  interface Pressed {
    void press();

    void end();

    void name(int number);

    void name(String word);
  }

  private Keys() {}

  /**
   * @param raw whether each key comes at once, not in lines
   */
  static void listen(InputStream in, boolean raw, Pressed pressed) {
    Thread thread =
        new Thread(
            () -> {
              try {
                if (raw) {
                  readKeys(in, pressed);
                } else {
                  readLines(in, pressed);
                }
              } catch (IOException e) {
                LOG.info("the input can't be read any more, so it is at its end: {}", e.toString());
              }
              pressed.end();
            },
            "keys");
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

  static void readLines(InputStream in, Pressed pressed) throws IOException {
    BufferedReader reader = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8));
    for (String line = reader.readLine(); line != null; line = reader.readLine()) {
      String word = line.strip();
      if (word.equalsIgnoreCase("q")) {
        return;
      }
      if (word.matches("[1-9][0-9]?")) {
        pressed.name(Integer.parseInt(word));
      } else if (word.length() > 1) {
        pressed.name(word);
      } else {
        pressed.press();
      }
    }
  }

  static void readKeys(InputStream in, Pressed pressed) throws IOException {
    byte[] keys = new byte[64];
    // A key of several bytes, such as an arrow, comes as a whole; quick ones may come together.
    for (int count = in.read(keys); count >= 0; count = in.read(keys)) {
      for (int at = 0; at < count; at = end(keys, at, count)) {
        int first = keys[at];
        if (first == 'q' || first == 'Q' || first == END_OF_INPUT_KEY) {
          return;
        }
        if (first >= '1' && first <= '9') {
          pressed.name(first - '0');
        } else {
          pressed.press();
        }
      }
    }
  }

  /** Where the key that begins there ends: a letter of several bytes, or a control sequence. */
  private static int end(byte[] keys, int begin, int count) {
    int at = begin + 1;
    if (keys[begin] == ESCAPE && at < count && (keys[at] == '[' || keys[at] == 'O')) {
      at++;
      while (at < count && !(keys[at] >= '@' && keys[at] <= '~')) {
        at++;
      }
      return Math.min(at + 1, count);
    }
    while (at < count && (keys[at] & 0xC0) == 0x80) {
      at++;
    }
    return at;
  }
}
