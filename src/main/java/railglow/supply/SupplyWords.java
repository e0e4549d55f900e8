package railglow.supply;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;

/** Fills templates and joins messages. Pure. */
final class SupplyWords {
  private static final int DECIMALS = 6;

  private SupplyWords() {}

  /** A number as every supply reads it: point, no exponent, no unit, at most six decimals. */
  static String number(double value) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException(value + " can't be sent to a supply");
    }
    BigDecimal rounded = new BigDecimal(value).setScale(DECIMALS, RoundingMode.HALF_EVEN);
    String text = rounded.stripTrailingZeros().toPlainString();
    return text.equals("-0") ? "0" : text;
  }

  static String filled(String template, int channel) {
    return template.replace("{channel}", Integer.toString(channel));
  }

  static String filled(String template, String name, double value, int channel) {
    return filled(template.replace("{" + name + "}", number(value)), channel);
  }

  /** One message of several; each part after the first starts again at the root of the tree. */
  static String joined(List<String> parts) {
    StringBuilder message = new StringBuilder();
    for (String part : parts) {
      if (message.length() > 0) {
        message.append(part.startsWith("*") || part.startsWith(":") ? ";" : ";:");
      }
      message.append(part);
    }
    return message.toString();
  }
}
