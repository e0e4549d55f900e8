package railglow.run.ladder;

import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The line of a journal that says a level is done, and of how many readings its step was made. */
final class StepNote {
  private static final Pattern FORM = Pattern.compile("level (\\d+) done: (\\d+) readings");

  private StepNote() {}

  /**
   * @param level from 0
   */
  static String text(int level, int readings) {
    return "level " + level + " done: " + readings + " readings";
  }

  /** How many readings; empty when the text says something else. */
  static OptionalInt readings(String text) {
    Matcher matcher = FORM.matcher(text);
    return matcher.matches()
        ? OptionalInt.of(Integer.parseInt(matcher.group(2)))
        : OptionalInt.empty();
  }
}
