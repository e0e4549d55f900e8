package railglow.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;

/** Command lines typed in this process, and what the program said to the last of them. */
final class Typed {
  private final ByteArrayOutputStream answers;
  private final ByteArrayOutputStream complaints;
  private final Terminal terminal;

  private Typed(ByteArrayOutputStream answers, ByteArrayOutputStream complaints) {
    this.answers = answers;
    this.complaints = complaints;
    terminal = new Terminal(stream(answers), stream(complaints), false);
  }

  private static PrintStream stream(ByteArrayOutputStream bytes) {
    return new PrintStream(bytes, true, StandardCharsets.UTF_8);
  }

  /** Answers and complaints are kept apart. */
  static Typed apart() {
    return new Typed(new ByteArrayOutputStream(), new ByteArrayOutputStream());
  }

  /** Answers and complaints come in one text, as on a screen. */
  static Typed together() {
    ByteArrayOutputStream both = new ByteArrayOutputStream();
    return new Typed(both, both);
  }

  /**
   * What the program says, wherever it says it, on one line.
   *
   * @param exitCode that it must end with
   */
  static String railglow(int exitCode, String... words) {
    Typed typed = together();
    int exit = typed.run(words);
    assertEquals(exitCode, exit, typed.onOneLine());
    return typed.onOneLine();
  }

  /** The exit code; what was said before is forgotten. */
  int run(String... words) {
    answers.reset();
    complaints.reset();
    return Main.run(terminal, words);
  }

  String answers() {
    return answers.toString(StandardCharsets.UTF_8);
  }

  String complaints() {
    return complaints.toString(StandardCharsets.UTF_8);
  }

  /** The complaints, or all that was said when they are together. */
  String onOneLine() {
    return complaints().replaceAll("\\s+", " ");
  }

  Terminal terminal() {
    return terminal;
  }
}
