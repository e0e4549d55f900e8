package railglow.camera;

import java.util.ArrayList;
import java.util.List;

/**
 * Splits a command line into words: blanks part them, single quotes keep everything, double quotes
 * keep all but a backslash's next character. No variables, no patterns, no shell.
 */
final class CommandLine {
  private CommandLine() {}

  /**
   * @throws IllegalArgumentException when it is empty or a quote is left open
   */
  static List<String> split(String text) {
    List<String> words = new ArrayList<>();
    StringBuilder word = null;
    char quote = 0;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      boolean escape = c == '\\' && quote != '\'' && i + 1 < text.length();
      if (escape || (quote != 0 && c != quote)) {
        word = word == null ? new StringBuilder() : word;
        word.append(escape ? text.charAt(++i) : c);
      } else if (c == '\'' || c == '"') {
        quote = quote == 0 ? c : 0;
        word = word == null ? new StringBuilder() : word;
      } else if (Character.isWhitespace(c)) {
        if (word != null) {
          words.add(word.toString());
        }
        word = null;
      } else {
        word = word == null ? new StringBuilder() : word;
        word.append(c);
      }
    }
    if (quote != 0) {
      throw new IllegalArgumentException("a " + quote + " is left open");
    }
    if (word != null) {
      words.add(word.toString());
    }
    if (words.isEmpty() || words.get(0).isEmpty()) {
      throw new IllegalArgumentException("no program is named");
    }
    return words;
  }
}
