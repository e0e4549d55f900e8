package railglow.scpi;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A program message as an instrument receives it: commands and queries joined by semicolons (IEEE
 * 488.2, chapter 7; SCPI-1999 volume 1, chapter 6).
 *
 * <p>Parsing is total: any text gives the commands before the first error, and that error. A header
 * without a leading colon continues in the branch of the one before it; common commands do not
 * change the branch.
 *
 * @param commands what may be executed, in order
 * @param error why the rest may not
 */
public record ProgramMessage(List<Command> commands, Optional<ScpiException> error) {

  public ProgramMessage {
    commands = List.copyOf(commands);
  }

  /**
   * @param text without its terminator, one character for each byte
   */
  public static ProgramMessage parse(String text) {
    List<Command> commands = new ArrayList<>();
    Cursor cursor = new Cursor(text, 0);
    List<String> branch = List.of();
    try {
      cursor.skipWhite();
      while (!cursor.atEnd()) {
        Command command = command(cursor, branch);
        commands.add(command);
        if (!command.isCommon()) {
          branch = command.header().subList(0, command.header().size() - 1);
        }
        if (cursor.atEnd()) {
          break;
        }
        if (cursor.take() != ';' || nothingFollows(cursor)) {
          throw cursor.error(ScpiError.SYNTAX_ERROR, "a command must follow the semicolon");
        }
      }
      return new ProgramMessage(commands, Optional.empty());
    } catch (ScpiException e) {
      return new ProgramMessage(commands, Optional.of(e));
    }
  }

  private static boolean nothingFollows(Cursor cursor) {
    cursor.skipWhite();
    return cursor.atEnd() || cursor.peek() == ';';
  }

  private static Command command(Cursor cursor, List<String> branch) throws ScpiException {
    int position = cursor.position();
    boolean common = cursor.peek() == '*';
    List<String> header = new ArrayList<>();
    if (common || cursor.peek() == ':') {
      cursor.take();
    } else {
      header.addAll(branch);
    }
    header.add(keyword(cursor));
    while (!common && cursor.peek() == ':') {
      cursor.take();
      header.add(keyword(cursor));
    }
    if (header.size() > 64) {
      throw cursor.error(ScpiError.COMMAND_HEADER_ERROR, "the header has more than 64 keywords");
    }
    boolean query = cursor.peek() == '?';
    if (query) {
      cursor.take();
    }
    boolean separated = cursor.skipWhite();
    List<Argument> arguments = new ArrayList<>();
    if (!cursor.atEnd() && cursor.peek() != ';') {
      if (!separated) {
        throw cursor.error(
            ScpiError.HEADER_SEPARATOR_ERROR,
            "after a header comes a space, got " + Quoted.of(cursor.peek()));
      }
      arguments(cursor, arguments);
    }
    return new Command(common, header, query, arguments, position);
  }

  private static String keyword(Cursor cursor) throws ScpiException {
    int start = cursor.position();
    if (!Cursor.isLetter(cursor.peek())) {
      boolean known = cursor.atEnd() || cursor.peek() >= ' ' && cursor.peek() < 127;
      throw cursor.error(
          known ? ScpiError.SYNTAX_ERROR : ScpiError.INVALID_CHARACTER,
          cursor.atEnd()
              ? "the header ends too early"
              : "a keyword starts with a letter, got " + Quoted.of(cursor.peek()));
    }
    String word = cursor.name();
    if (word.length() > Cursor.MAX_NAME) {
      throw new ScpiException(
          ScpiError.MNEMONIC_TOO_LONG,
          start,
          Quoted.of(word) + " has more than " + Cursor.MAX_NAME + " characters");
    }
    return word.toUpperCase(Locale.ROOT);
  }

  private static void arguments(Cursor cursor, List<Argument> arguments) throws ScpiException {
    while (true) {
      arguments.add(argument(cursor));
      cursor.skipWhite();
      if (cursor.atEnd() || cursor.peek() == ';') {
        return;
      }
      if (cursor.peek() != ',') {
        throw cursor.error(
            ScpiError.INVALID_SEPARATOR,
            "between parameters stands a comma, got " + Quoted.of(cursor.peek()));
      }
      cursor.take();
      cursor.skipWhite();
    }
  }

  private static Argument argument(Cursor cursor) throws ScpiException {
    int start = cursor.position();
    char first = cursor.peek();
    if (Cursor.isDigit(first) || first == '+' || first == '-' || first == '.') {
      double value = cursor.decimal(true);
      return Argument.number(Argument.Kind.DECIMAL, value, suffix(cursor), start);
    }
    if (Cursor.isLetter(first)) {
      String word = cursor.name();
      if (word.length() > Cursor.MAX_NAME) {
        throw new ScpiException(
            ScpiError.CHARACTER_DATA_TOO_LONG, start, Quoted.of(word) + " is too long");
      }
      return Argument.text(Argument.Kind.CHARACTER, word.toUpperCase(Locale.ROOT), start);
    }
    if (cursor.atBlock()) {
      return Argument.block(cursor.block(), start);
    }
    return switch (first) {
      case '"', '\'' -> Argument.text(Argument.Kind.STRING, cursor.string(), start);
      case '#' -> Argument.number(Argument.Kind.NON_DECIMAL, cursor.nonDecimal(), "", start);
      case '(' -> Argument.text(Argument.Kind.EXPRESSION, expression(cursor), start);
      default ->
          throw cursor.error(
              cursor.atEnd() || first == ',' || first == ';'
                  ? ScpiError.MISSING_PARAMETER
                  : ScpiError.INVALID_CHARACTER,
              "a parameter must stand here");
    };
  }

  /** Letters and the marks of compound units; may be empty. */
  private static String suffix(Cursor cursor) throws ScpiException {
    cursor.skipWhite();
    int start = cursor.position();
    while (Cursor.isLetter(cursor.peek()) || "/.-".indexOf(cursor.peek()) >= 0) {
      cursor.take();
    }
    String suffix = cursor.since(start);
    if (suffix.length() > Cursor.MAX_NAME) {
      throw new ScpiException(
          ScpiError.SUFFIX_TOO_LONG, start, "the suffix " + Quoted.of(suffix) + " is too long");
    }
    return suffix;
  }

  private static String expression(Cursor cursor) throws ScpiException {
    int start = cursor.position();
    int depth = 0;
    while (!cursor.atEnd()) {
      char c = cursor.take();
      depth += c == '(' ? 1 : c == ')' ? -1 : 0;
      if (depth == 0) {
        String whole = cursor.since(start);
        return whole.substring(1, whole.length() - 1);
      }
    }
    throw new ScpiException(ScpiError.EXPRESSION_ERROR, start, "the expression has no end");
  }
}
