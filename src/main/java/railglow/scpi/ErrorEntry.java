package railglow.scpi;

/**
 * One entry of an instrument's error queue: the answer to {@code SYSTem:ERRor?}.
 *
 * @param code 0 for none, negative for the standard's errors, positive for the maker's own
 * @param text without quotes; may carry the instrument's details after a semicolon
 */
public record ErrorEntry(int code, String text) {
  private static final int MAX_TEXT = 255;
  public static final ErrorEntry NONE = of(ScpiError.NO_ERROR);

  /**
   * @throws IllegalArgumentException if the code does not fit into 16 bits or the text is longer
   *     than 255 characters
   */
  public ErrorEntry {
    if (code < Short.MIN_VALUE || code > Short.MAX_VALUE) {
      throw new IllegalArgumentException("error number " + code + " is not in -32768..32767");
    }
    if (text.length() > MAX_TEXT) {
      throw new IllegalArgumentException(
          "error text has " + text.length() + " characters, at most " + MAX_TEXT + " are allowed");
    }
  }

  public static ErrorEntry of(ScpiError error) {
    return new ErrorEntry(error.code(), error.text());
  }

  /** An entry with details, which are cut where the standard's 255 characters end. */
  public static ErrorEntry of(ScpiError error, String detail) {
    String text = error.text() + ";" + detail;
    return new ErrorEntry(
        error.code(), text.length() > MAX_TEXT ? text.substring(0, MAX_TEXT) : text);
  }

  public boolean isError() {
    return code != 0;
  }

  /** As an instrument sends it: {@code -113,"Undefined header"}. */
  public String format() {
    return code + "," + ReplyText.string(text);
  }

  /**
   * Reads a reply to {@code SYSTem:ERRor?}. Besides the standard's form the ones that real
   * instruments send are accepted: {@code +0,"No error"}, a missing or an empty text, a text
   * without quotes.
   *
   * @throws ScpiException if there is no number, or it does not fit into 16 bits
   */
  public static ErrorEntry parse(String reply) throws ScpiException {
    int comma = reply.indexOf(',');
    String number = (comma < 0 ? reply : reply.substring(0, comma)).strip();
    if (!number.matches("[+-]?[0-9]{1,6}")) {
      throw new ScpiException(
          ScpiError.NUMERIC_DATA_ERROR, 0, Quoted.of(number) + " is not an error number");
    }
    int code = Integer.parseInt(number);
    if (code < Short.MIN_VALUE || code > Short.MAX_VALUE) {
      throw new ScpiException(
          ScpiError.DATA_OUT_OF_RANGE, 0, "error number " + code + " is not in -32768..32767");
    }
    String text = comma < 0 ? "" : reply.substring(comma + 1).strip();
    if (text.startsWith("\"") || text.startsWith("'")) {
      Cursor cursor = new Cursor(reply, reply.indexOf(text.charAt(0), comma));
      text = cursor.string();
      cursor.skipWhite();
      if (!cursor.atEnd()) {
        throw cursor.error(ScpiError.INVALID_SEPARATOR, "more text after the error's text");
      }
    }
    if (text.isEmpty()) {
      text = ScpiError.of(code).map(ScpiError::text).orElse("");
    }
    return new ErrorEntry(code, text.length() > MAX_TEXT ? text.substring(0, MAX_TEXT) : text);
  }
}
