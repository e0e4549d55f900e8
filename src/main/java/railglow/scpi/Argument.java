package railglow.scpi;

import java.util.Locale;

/**
 * One parameter of a command (IEEE 488.2, 7.7). Each accessor gives the value or the error the
 * standard has for the wrong kind. Immutable.
 */
public final class Argument {
  /** The kinds of program data. */
  public enum Kind {
    /** NRf: 28, 0.28E2, 28000m. */
    DECIMAL,
    /** #H2F, #Q57, #B101111. */
    NON_DECIMAL,
    /** A word such as ON or MAXimum. */
    CHARACTER,
    /** Text in quotes. */
    STRING,
    /** Counted or uncounted bytes. */
    BLOCK,
    /** Text in parentheses. */
    EXPRESSION
  }

  private final Kind kind;
  private final double value;
  private final String text;
  private final byte[] bytes;
  private final int position;

  private Argument(Kind kind, double value, String text, byte[] bytes, int position) {
    this.kind = kind;
    this.value = value;
    this.text = text;
    this.bytes = bytes;
    this.position = position;
  }

  static Argument number(Kind kind, double value, String suffix, int position) {
    return new Argument(kind, value, suffix, new byte[0], position);
  }

  static Argument text(Kind kind, String text, int position) {
    return new Argument(kind, Double.NaN, text, new byte[0], position);
  }

  static Argument block(byte[] bytes, int position) {
    return new Argument(Kind.BLOCK, Double.NaN, "", bytes, position);
  }

  public Kind kind() {
    return kind;
  }

  /** Index of its first character in the message. */
  public int position() {
    return position;
  }

  /**
   * A number that may carry a suffix of the unit, with or without a multiplier.
   *
   * @param unit in upper case as suffixes spell it ({@code "V"}, {@code "A"}, {@code "OHM"}, {@code
   *     "S"}); empty if only multipliers are allowed
   * @return the value in that unit, finite
   * @throws ScpiException if it is no number, has another suffix, or is too large
   */
  public double number(String unit) throws ScpiException {
    if (kind != Kind.DECIMAL && kind != Kind.NON_DECIMAL) {
      throw wrongKind("a number");
    }
    double scaled = value;
    if (!text.isEmpty()) {
      int exponent =
          Suffix.exponent(text, unit)
              .orElseThrow(
                  () ->
                      new ScpiException(
                          ScpiError.INVALID_SUFFIX,
                          position,
                          Quoted.of(text)
                              + (unit.isEmpty() ? " is no multiplier" : " is not in " + unit)));
      scaled = Suffix.scale(value, exponent);
    }
    if (!Double.isFinite(scaled)) {
      throw new ScpiException(ScpiError.DATA_OUT_OF_RANGE, position, "the number is too large");
    }
    return scaled;
  }

  /**
   * A number without any suffix.
   *
   * @throws ScpiException -138 if it has one
   */
  public double number() throws ScpiException {
    if (kind == Kind.DECIMAL && !text.isEmpty()) {
      throw new ScpiException(
          ScpiError.SUFFIX_NOT_ALLOWED, position, "no suffix allowed, got " + Quoted.of(text));
    }
    return number("");
  }

  /**
   * A number rounded to an integer, ties away from zero.
   *
   * @throws ScpiException also if it is outside low..high
   */
  public int integer(int low, int high) throws ScpiException {
    double rounded = Math.copySign(Math.floor(Math.abs(number()) + 0.5), number());
    if (rounded < low || rounded > high) {
      throw new ScpiException(
          ScpiError.DATA_OUT_OF_RANGE, position, number() + " is not in " + low + ".." + high);
    }
    return (int) rounded;
  }

  /** ON, OFF, or a number, of which any that does not round to 0 means true. */
  public boolean bool() throws ScpiException {
    if (kind != Kind.CHARACTER) {
      return Math.abs(number()) >= 0.5;
    }
    if (text.equals("ON") || text.equals("OFF")) {
      return text.equals("ON");
    }
    throw new ScpiException(
        ScpiError.ILLEGAL_PARAMETER_VALUE, position, Quoted.of(text) + " is not ON or OFF");
  }

  /** A word, in upper case. */
  public String word() throws ScpiException {
    if (kind != Kind.CHARACTER) {
      throw wrongKind("a word");
    }
    return text;
  }

  /**
   * Whether this is the given word in its short or long form.
   *
   * @param mnemonic as manuals print it: {@code MAXimum}
   */
  public boolean is(String mnemonic) {
    return kind == Kind.CHARACTER && Mnemonic.of(mnemonic).matches(text);
  }

  /** The content of a string. */
  public String string() throws ScpiException {
    if (kind != Kind.STRING) {
      throw wrongKind("a string");
    }
    return text;
  }

  /** The bytes of a block; a copy. */
  public byte[] block() throws ScpiException {
    if (kind != Kind.BLOCK) {
      throw wrongKind("a block");
    }
    return bytes.clone();
  }

  /** What stands between the parentheses. */
  public String expression() throws ScpiException {
    if (kind != Kind.EXPRESSION) {
      throw wrongKind("an expression");
    }
    return text;
  }

  private ScpiException wrongKind(String wanted) {
    ScpiError error =
        switch (kind) {
          case DECIMAL, NON_DECIMAL -> ScpiError.NUMERIC_DATA_NOT_ALLOWED;
          case CHARACTER -> ScpiError.CHARACTER_DATA_NOT_ALLOWED;
          case STRING -> ScpiError.STRING_DATA_NOT_ALLOWED;
          case BLOCK -> ScpiError.BLOCK_DATA_NOT_ALLOWED;
          case EXPRESSION -> ScpiError.EXPRESSION_DATA_NOT_ALLOWED;
        };
    String got = kind.name().toLowerCase(Locale.ROOT).replace('_', '-');
    return new ScpiException(error, position, "wanted " + wanted + ", got " + got + " data");
  }
}
