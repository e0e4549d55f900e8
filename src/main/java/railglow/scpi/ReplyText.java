package railglow.scpi;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;

/**
 * Formats replies as an instrument sends them (IEEE 488.2, chapter 8). Values that are no
 * measurement become the standard's marks 9.91E37 and +-9.9E37. Stateless and thread-safe.
 */
public final class ReplyText {
  /** Stands for "not a number". */
  public static final String NOT_A_NUMBER = "9.91E37";

  /** Stands for infinity; with a minus sign for its negative. */
  public static final String INFINITY = "9.9E37";

  private ReplyText() {}

  public static String nr1(long value) {
    return Long.toString(value);
  }

  /** With an explicit point: {@code nr2(1.2, 3)} gives {@code 1.200}. */
  public static String nr2(double value, int decimals) {
    if (!Double.isFinite(value) || Math.abs(value) >= ScpiReply.NO_MEASUREMENT) {
      return special(value);
    }
    return BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_EVEN).toPlainString();
  }

  /** With an exponent: {@code nr3(1.2, 4)} gives {@code 1.2000E+00}. */
  public static String nr3(double value, int decimals) {
    if (!Double.isFinite(value) || Math.abs(value) >= ScpiReply.NO_MEASUREMENT) {
      return special(value);
    }
    return String.format(Locale.ROOT, "%." + decimals + "E", value);
  }

  private static String special(double value) {
    return Double.isNaN(value) ? NOT_A_NUMBER : value > 0 ? INFINITY : "-" + INFINITY;
  }

  public static String bool(boolean value) {
    return value ? "1" : "0";
  }

  /** In double quotes, with each of them inside doubled. */
  public static String string(String content) {
    return "\"" + content.replace("\"", "\"\"") + "\"";
  }

  /** Values of one answer. */
  public static String list(String... items) {
    return String.join(",", items);
  }

  /** The answers to the queries of one message. */
  public static String answers(String... answers) {
    return String.join(";", answers);
  }
}
