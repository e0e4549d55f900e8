package railglow.scpi;

import java.util.Locale;
import java.util.OptionalInt;

/**
 * One item of a reply. Each accessor gives the value or an error that shows what came instead.
 * Immutable.
 */
public final class ReplyItem {
  /** What an item looks like. */
  public enum Kind {
    /** An integer. */
    NR1,
    /** A number with a point. */
    NR2,
    /** A number with an exponent. */
    NR3,
    /** #H2F, #Q57, #B101111. */
    NON_DECIMAL,
    /** A keyword. */
    WORD,
    /** Text in quotes. */
    STRING,
    /** Counted or uncounted bytes. */
    BLOCK,
    /** Printable text that is none of the above, such as a number with a unit, or nothing. */
    OTHER
  }

  private final Kind kind;
  private final double value;
  private final String text;
  private final byte[] bytes;
  private final int position;

  private ReplyItem(Kind kind, double value, String text, byte[] bytes, int position) {
    this.kind = kind;
    this.value = value;
    this.text = text;
    this.bytes = bytes;
    this.position = position;
  }

  static ReplyItem read(Cursor cursor) throws ScpiException {
    cursor.skipWhite();
    int start = cursor.position();
    char first = cursor.peek();
    if (cursor.atBlock()) {
      return new ReplyItem(Kind.BLOCK, Double.NaN, "", cursor.block(), start);
    }
    if (first == '"' || first == '\'') {
      return new ReplyItem(Kind.STRING, Double.NaN, cursor.string(), new byte[0], start);
    }
    while (!cursor.atEnd() && cursor.peek() != ',' && cursor.peek() != ';') {
      cursor.take();
    }
    String text = cursor.since(start).strip();
    for (int i = 0; i < text.length(); i++) {
      if (text.charAt(i) < ' ' || text.charAt(i) > '~') {
        throw new ScpiException(
            ScpiError.INVALID_CHARACTER,
            start + i,
            "a reply can't hold the byte " + Quoted.of(text.charAt(i)));
      }
    }
    return classify(text, start);
  }

  private static ReplyItem classify(String text, int start) throws ScpiException {
    Cursor cursor = new Cursor(text, 0);
    char first = cursor.peek();
    double value = Double.NaN;
    Kind kind = Kind.OTHER;
    try {
      if (Cursor.isDigit(first) || first == '+' || first == '-' || first == '.') {
        value = cursor.decimal(false);
        boolean exponent = text.indexOf('E') >= 0 || text.indexOf('e') >= 0;
        kind = exponent ? Kind.NR3 : text.indexOf('.') >= 0 ? Kind.NR2 : Kind.NR1;
      } else if (first == '#') {
        value = cursor.nonDecimal();
        kind = Kind.NON_DECIMAL;
      } else if (Cursor.isLetter(first)) {
        cursor.name();
        kind = Kind.WORD;
      }
    } catch (ScpiException e) {
      if (e.error() != ScpiError.INVALID_CHARACTER_IN_NUMBER) {
        throw new ScpiException(e.error(), start + e.position(), Quoted.of(text));
      }
      kind = Kind.OTHER;
    }
    if (!cursor.atEnd()) {
      kind = Kind.OTHER;
    }
    return new ReplyItem(kind, value, text, new byte[0], start);
  }

  public Kind kind() {
    return kind;
  }

  /** Index of its first character in the reply. */
  public int position() {
    return position;
  }

  /** The item as text: a string's content, otherwise as it came. */
  public String text() {
    return text;
  }

  /**
   * The number. Marks for "no measurement" (magnitude of 9.9E37 or more, or one of the words NAN,
   * INF, NINF) give NaN or an infinity: a value that is not finite is not a measurement.
   *
   * @throws ScpiException if the item is no number
   */
  public double number() throws ScpiException {
    switch (kind) {
      case NR1, NR2, NR3, NON_DECIMAL -> {
        return ScpiReply.measured(value);
      }
      case WORD -> {
        switch (text.toUpperCase(Locale.ROOT)) {
          case "NAN" -> {
            return Double.NaN;
          }
          case "INF", "INFINITY" -> {
            return Double.POSITIVE_INFINITY;
          }
          case "NINF", "NINFINITY" -> {
            return Double.NEGATIVE_INFINITY;
          }
          default -> throw notA("a number");
        }
      }
      default -> throw notA("a number");
    }
  }

  /**
   * The number of an instrument that may add the unit, with or without a multiplier: {@code 5.00V},
   * {@code 120 mA}.
   *
   * @param unit in upper case: {@code "V"}, {@code "A"}
   */
  public double number(String unit) throws ScpiException {
    if (kind != Kind.OTHER) {
      return number();
    }
    Cursor cursor = new Cursor(text, 0);
    double plain;
    try {
      plain = cursor.decimal(false);
    } catch (ScpiException e) {
      throw notA("a number");
    }
    cursor.skipWhite();
    OptionalInt exponent = Suffix.exponent(cursor.rest(), unit);
    if (exponent.isEmpty()) {
      throw notA("a number in " + unit);
    }
    return ScpiReply.measured(Suffix.scale(plain, exponent.getAsInt()));
  }

  /**
   * A number without fraction.
   *
   * @throws ScpiException if it is no number, has a fraction, or is outside low..high
   */
  public int integer(int low, int high) throws ScpiException {
    double number = number();
    if (number != Math.rint(number) || number < low || number > high) {
      throw notA("an integer in " + low + ".." + high);
    }
    return (int) number;
  }

  /** 0 or 1; ON and OFF are accepted too. */
  public boolean bool() throws ScpiException {
    if (kind == Kind.WORD && (text.equalsIgnoreCase("ON") || text.equalsIgnoreCase("OFF"))) {
      return text.equalsIgnoreCase("ON");
    }
    if (kind == Kind.NR1 && (value == 0 || value == 1)) {
      return value == 1;
    }
    throw notA("0, 1, ON or OFF");
  }

  /** A keyword, in upper case. */
  public String word() throws ScpiException {
    if (kind != Kind.WORD) {
      throw notA("a word");
    }
    return text.toUpperCase(Locale.ROOT);
  }

  /** The content of a string. */
  public String string() throws ScpiException {
    if (kind != Kind.STRING) {
      throw notA("a string in quotes");
    }
    return text;
  }

  /** The bytes of a block; a copy. */
  public byte[] block() throws ScpiException {
    if (kind != Kind.BLOCK) {
      throw notA("a block");
    }
    return bytes.clone();
  }

  private ScpiException notA(String wanted) {
    String got = kind == Kind.BLOCK ? "a block of " + bytes.length + " bytes" : Quoted.of(text);
    return new ScpiException(
        ScpiError.DATA_TYPE_ERROR, position, "wanted " + wanted + ", got " + got);
  }
}
