package railglow.scpi;

import java.nio.charset.StandardCharsets;

/**
 * A place in a wire text and the elements that replies and program messages share. One character
 * stands for one byte (ISO 8859-1). Every method either moves forward or throws, so that parsing
 * takes time proportional to the length of the text.
 */
final class Cursor {
  static final int MAX_NAME = 12;
  private static final int MAX_MANTISSA_DIGITS = 255;
  private static final int MAX_EXPONENT = 32000;
  private final String text;
  private int at;

  Cursor(String text, int at) {
    this.text = text;
    this.at = at;
  }

  boolean atEnd() {
    return at >= text.length();
  }

  /** The next character, or NUL at the end. */
  char peek() {
    return peek(0);
  }

  char peek(int ahead) {
    return at + ahead < text.length() ? text.charAt(at + ahead) : '\0';
  }

  char take() {
    return text.charAt(at++);
  }

  int position() {
    return at;
  }

  String since(int start) {
    return text.substring(start, at);
  }

  String rest() {
    String rest = text.substring(at);
    at = text.length();
    return rest;
  }

  ScpiException error(ScpiError error, String detail) {
    return new ScpiException(error, at, detail);
  }

  /** Moves over white space as IEEE 488.2, 7.4.1.2 defines it: all control codes but newline. */
  boolean skipWhite() {
    int start = at;
    while (!atEnd() && isWhite(peek())) {
      at++;
    }
    return at > start;
  }

  static boolean isWhite(char c) {
    return c <= ' ' && c != '\n';
  }

  static boolean isLetter(char c) {
    return c >= 'A' && c <= 'Z' || c >= 'a' && c <= 'z';
  }

  static boolean isDigit(char c) {
    return c >= '0' && c <= '9';
  }

  static boolean isNamePart(char c) {
    return isLetter(c) || isDigit(c) || c == '_';
  }

  /** Letters, digits and underscores from here on; may be empty. */
  String name() {
    int start = at;
    while (!atEnd() && isNamePart(peek())) {
      at++;
    }
    return since(start);
  }

  /** A string in single or double quotes, with the quote doubled inside. */
  String string() throws ScpiException {
    int start = at;
    char quote = take();
    StringBuilder content = new StringBuilder();
    while (!atEnd()) {
      char c = take();
      if (c != quote) {
        content.append(c);
      } else if (peek() == quote && !atEnd()) {
        content.append(take());
      } else {
        return content.toString();
      }
    }
    throw new ScpiException(ScpiError.INVALID_STRING_DATA, start, "the string has no end");
  }

  /**
   * A block: {@code #<digits><length><bytes>}, or {@code #0} and all bytes to the end. The length
   * is compared with what is there before anything is copied.
   */
  byte[] block() throws ScpiException {
    int start = at;
    take();
    int digits = take() - '0';
    if (digits == 0) {
      return rest().getBytes(StandardCharsets.ISO_8859_1);
    }
    long length = 0;
    for (int i = 0; i < digits; i++) {
      if (!isDigit(peek())) {
        throw error(ScpiError.INVALID_BLOCK_DATA, "the block's length has fewer digits than told");
      }
      length = length * 10 + (take() - '0');
    }
    if (length > text.length() - at) {
      throw new ScpiException(
          ScpiError.INVALID_BLOCK_DATA,
          start,
          "the block tells " + length + " bytes and has " + (text.length() - at));
    }
    at += (int) length;
    return text.substring(at - (int) length, at).getBytes(StandardCharsets.ISO_8859_1);
  }

  /** Whether a block starts here, and not a number to base 2, 8 or 16. */
  boolean atBlock() {
    return peek() == '#' && isDigit(peek(1));
  }

  /** A number written {@code #H}, {@code #Q} or {@code #B}; exact up to 53 bits. */
  double nonDecimal() throws ScpiException {
    int start = at;
    take();
    int base =
        switch (Character.toUpperCase(peek())) {
          case 'H' -> 16;
          case 'Q' -> 8;
          case 'B' -> 2;
          default ->
              throw error(ScpiError.INVALID_CHARACTER_IN_NUMBER, "not #H, #Q, #B or a block");
        };
    take();
    double value = 0;
    int digits = 0;
    while (!atEnd() && Character.digit(peek(), base) >= 0 && peek() < 128) {
      value = value * base + Character.digit(take(), base);
      if (++digits > MAX_MANTISSA_DIGITS) {
        throw new ScpiException(ScpiError.TOO_MANY_DIGITS, start, "more than 255 digits");
      }
    }
    if (digits == 0 || isNamePart(peek())) {
      throw error(ScpiError.INVALID_CHARACTER_IN_NUMBER, "no digit to base " + base + " here");
    }
    return value;
  }

  /**
   * A decimal number, NR1, NR2 or NR3.
   *
   * @param spacedExponent whether white space may stand around the E, as program messages allow
   *     (IEEE 488.2, 7.7.2) and replies do not
   * @throws ScpiException with -124 for more than 255 digits without leading zeros and -123 for an
   *     exponent beyond 32000
   */
  double decimal(boolean spacedExponent) throws ScpiException {
    int start = at;
    StringBuilder number = new StringBuilder();
    if (peek() == '+' || peek() == '-') {
      number.append(take());
    }
    int digits = 0;
    int significant = 0;
    boolean point = false;
    while (isDigit(peek()) || peek() == '.' && !point) {
      char c = take();
      if (c == '.') {
        point = true;
        number.append(c);
        continue;
      }
      digits++;
      if (significant > 0 || c != '0') {
        significant++;
      }
      if (significant > 0 || point) {
        number.append(c);
      }
      if (significant > MAX_MANTISSA_DIGITS) {
        throw new ScpiException(ScpiError.TOO_MANY_DIGITS, start, "more than 255 digits");
      }
    }
    if (digits == 0) {
      throw error(ScpiError.INVALID_CHARACTER_IN_NUMBER, "a number has no digits");
    }
    number.append(significant == 0 ? "0" : "");
    exponent(number, spacedExponent);
    return Double.parseDouble(number.toString());
  }

  private void exponent(StringBuilder number, boolean spaced) throws ScpiException {
    int before = at;
    if (spaced) {
      skipWhite();
    }
    if (Character.toUpperCase(peek()) != 'E') {
      at = before;
      return;
    }
    take();
    if (spaced) {
      skipWhite();
    }
    boolean negative = peek() == '-';
    if (negative || peek() == '+') {
      take();
    }
    if (!isDigit(peek())) {
      // "5 EX" has a multiplier, not an exponent
      at = before;
      return;
    }
    int exponent = 0;
    while (isDigit(peek())) {
      exponent = exponent * 10 + (take() - '0');
      if (exponent > MAX_EXPONENT) {
        throw new ScpiException(
            ScpiError.EXPONENT_TOO_LARGE, before, "the exponent is beyond " + MAX_EXPONENT);
      }
    }
    number.append('E').append(negative ? "-" : "").append(exponent);
  }
}
