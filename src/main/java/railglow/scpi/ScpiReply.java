package railglow.scpi;

import java.util.ArrayList;
import java.util.List;

/**
 * A reply as the controller receives it: answers joined by semicolons, each a list of items joined
 * by commas (IEEE 488.2, chapter 8). Immutable.
 *
 * <p>Free text such as the answer to {@code *IDN?} is not made for this; see {@link Identity}.
 *
 * @param answers one list of items for each query that was asked
 */
public record ScpiReply(List<List<ReplyItem>> answers) {
  /**
   * A number of this magnitude or more is a mark and not a measurement (SCPI-1999 volume 1, 7.2.1).
   */
  public static final double NO_MEASUREMENT = 9.9e37;

  private static final double NOT_A_NUMBER = 9.91e37;

  public ScpiReply {
    answers = answers.stream().map(List::copyOf).toList();
  }

  /**
   * @param text without its terminator, one character for each byte
   * @throws ScpiException if the reply is empty, holds a byte that no reply can hold, or a string
   *     or block that does not end
   */
  public static ScpiReply parse(String text) throws ScpiException {
    Cursor cursor = new Cursor(text, 0);
    List<List<ReplyItem>> answers = new ArrayList<>();
    List<ReplyItem> items = new ArrayList<>();
    if (text.isBlank()) {
      throw cursor.error(ScpiError.SYNTAX_ERROR, "the reply is empty");
    }
    while (true) {
      items.add(ReplyItem.read(cursor));
      cursor.skipWhite();
      if (cursor.atEnd()) {
        answers.add(items);
        return new ScpiReply(answers);
      }
      char separator = cursor.take();
      if (separator == ';') {
        answers.add(items);
        items = new ArrayList<>();
      } else if (separator != ',') {
        throw new ScpiException(
            ScpiError.INVALID_SEPARATOR,
            cursor.position() - 1,
            "between items stands a comma or semicolon, got " + Quoted.of(separator));
      }
    }
  }

  /**
   * A reply that must hold exactly this many answers of one item each, as compound queries of
   * readings give.
   */
  public static List<ReplyItem> items(String text, int count) throws ScpiException {
    ScpiReply reply = parse(text);
    if (reply.answers.size() != count) {
      throw new ScpiException(
          ScpiError.SYNTAX_ERROR,
          0,
          "wanted " + count + " answer(s), got " + reply.answers.size() + ": " + Quoted.of(text));
    }
    List<ReplyItem> items = new ArrayList<>();
    for (List<ReplyItem> answer : reply.answers) {
      if (answer.size() != 1) {
        throw new ScpiException(
            ScpiError.SYNTAX_ERROR,
            answer.get(1).position(),
            "wanted one item in an answer, got " + answer.size() + ": " + Quoted.of(text));
      }
      items.add(answer.get(0));
    }
    return items;
  }

  /** A reply of exactly one item. */
  public static ReplyItem item(String text) throws ScpiException {
    return items(text, 1).get(0);
  }

  /** See {@link ReplyItem#number()}. */
  public static double number(String text) throws ScpiException {
    return item(text).number();
  }

  /** Turns the standard's marks into NaN and infinities, so that "finite" means "measured". */
  static double measured(double value) {
    if (Math.abs(value) < NO_MEASUREMENT) {
      return value;
    }
    return value == NOT_A_NUMBER ? Double.NaN : Math.copySign(Double.POSITIVE_INFINITY, value);
  }
}
