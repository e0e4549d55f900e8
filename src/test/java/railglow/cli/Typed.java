package railglow.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;

/** A command line typed in this process. */
final class Typed {
  private Typed() {}

  /**
   * What the program says, wherever it says it, on one line.
   *
   * @param exitCode that it must end with
   */
  static String railglow(int exitCode, String... words) {
    ByteArrayOutputStream said = new ByteArrayOutputStream();
    PrintStream out = new PrintStream(said, true, StandardCharsets.UTF_8);
    int exit = Main.run(new Terminal(out, out, false), words);
    String text = said.toString(StandardCharsets.UTF_8).replaceAll("\\s+", " ");
    assertEquals(exitCode, exit, text);
    return text;
  }
}
