package railglow.scpi;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;

/**
 * Builds program messages. Numbers are written plainly, without exponent where that is shorter to
 * read, and always without a suffix. Stateless and thread-safe.
 */
public final class ProgramText {
  private ProgramText() {}

  /**
   * The shortest decimal text that reads back as the same value: {@code 1.2}, {@code 0.005}.
   *
   * @throws IllegalArgumentException if the value is not finite: such a value is never sent
   */
  public static String number(double value) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("a supply can't be sent the number " + value);
    }
    if (value == 0) {
      return "0";
    }
    BigDecimal decimal = BigDecimal.valueOf(value).stripTrailingZeros();
    boolean plain = decimal.scale() <= 12 && decimal.scale() >= -9 && decimal.precision() <= 20;
    return plain ? decimal.toPlainString() : decimal.toString();
  }

  public static String bool(boolean value) {
    return value ? "ON" : "OFF";
  }

  /**
   * A quoted string.
   *
   * @throws IllegalArgumentException if it holds a line end, which would end the message
   */
  public static String string(String content) {
    if (content.indexOf('\n') >= 0 || content.indexOf('\r') >= 0) {
      throw new IllegalArgumentException("a string in a program message can't hold a line end");
    }
    return ReplyText.string(content);
  }

  /** A block with its length in front, one character for each byte. */
  public static String block(byte[] bytes) {
    String length = Integer.toString(bytes.length);
    return "#" + length.length() + length + new String(bytes, StandardCharsets.ISO_8859_1);
  }

  /** A header with its parameters: {@code command("VOLT", "1.2")} gives {@code VOLT 1.2}. */
  public static String command(String header, String... arguments) {
    return arguments.length == 0 ? header : header + " " + String.join(",", arguments);
  }

  /**
   * Joins commands and queries into one message. Each but the first gets a leading colon, so that
   * none is looked for in the branch of the one before.
   *
   * @throws IllegalArgumentException if there is none
   */
  public static String compound(String... units) {
    if (units.length == 0) {
      throw new IllegalArgumentException("a message has at least one command");
    }
    StringBuilder message = new StringBuilder(units[0]);
    for (int i = 1; i < units.length; i++) {
      boolean rooted = units[i].startsWith("*") || units[i].startsWith(":");
      message.append(rooted ? ";" : ";:").append(units[i]);
    }
    return message.toString();
  }
}
