package railglow.units;

import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads and prints numbers that carry their unit, such as {@code 350 mA} or {@code 6.8 ohm}.
 *
 * <p>Inside the program a quantity is a {@code double} in the unprefixed unit, with the unit in its
 * name. Stateless and thread-safe.
 */
public final class Quantity {
  private static final Pattern TEXT =
      Pattern.compile("\\s*([+-]?(?:\\d+\\.?\\d*|\\.\\d+)(?:[eE][+-]?\\d{1,3})?)\\s*(\\S*)\\s*");
  private static final Map<String, Double> PREFIXES =
      Map.of("n", 1e-9, "u", 1e-6, "\u00b5", 1e-6, "m", 1e-3, "", 1.0, "k", 1e3, "M", 1e6);

  private Quantity() {}

  /**
   * Parses a number with its unit.
   *
   * @param text for example {@code "1.2 V"}; the unit is never optional
   * @param unit the unit that must be there, with or without an SI prefix
   * @return the value in the unprefixed unit, finite
   * @throws QuantityException if the text is not such a quantity
   */
  public static double parse(String text, Unit unit) {
    Matcher matcher = TEXT.matcher(text);
    if (!matcher.matches()) {
      throw new QuantityException("'" + text + "' is not a number with a unit; " + wanted(unit));
    }
    String written = matcher.group(2).replace("\u03a9", "ohm").replace("\u2126", "ohm");
    written = written.replace("\u00b0C", "degC");
    if (unit == Unit.SECOND && written.equals("min")) {
      return finite(Double.parseDouble(matcher.group(1)) * 60, text);
    }
    if (!written.endsWith(unit.symbol())) {
      throw new QuantityException(
          written.isEmpty()
              ? "'" + text.strip() + "' has no unit; " + wanted(unit)
              : "'" + text.strip() + "' is not in " + unit.symbol() + "; " + wanted(unit));
    }
    String prefix = written.substring(0, written.length() - unit.symbol().length());
    Double factor = unit.takesPrefix() || prefix.isEmpty() ? PREFIXES.get(prefix) : null;
    if (factor == null) {
      throw new QuantityException(
          "'" + prefix + "' is not a prefix of " + unit.symbol() + "; " + wanted(unit));
    }
    return finite(Double.parseDouble(matcher.group(1)) * factor, text);
  }

  /** Prints a value with about four significant digits and a fitting prefix: {@code "350 mA"}. */
  public static String format(double value, Unit unit) {
    if (Double.isNaN(value)) {
      return "unknown";
    }
    if (Double.isInfinite(value)) {
      return value > 0 ? "unlimited" : "-unlimited";
    }
    double magnitude = Math.abs(value);
    if (!unit.takesPrefix() || magnitude == 0) {
      return digits(value) + " " + unit.symbol();
    }
    if (magnitude < 0.9999995e-3) {
      return magnitude < 0.9999995e-6
          ? digits(value * 1e9) + " n" + unit.symbol()
          : digits(value * 1e6) + " u" + unit.symbol();
    }
    if (magnitude < 0.9999995) {
      return digits(value * 1e3) + " m" + unit.symbol();
    }
    if (magnitude < 999.95 || unit == Unit.SECOND) {
      return digits(value) + " " + unit.symbol();
    }
    return magnitude < 999.95e3
        ? digits(value * 1e-3) + " k" + unit.symbol()
        : digits(value * 1e-6) + " M" + unit.symbol();
  }

  private static String digits(double value) {
    double magnitude = Math.abs(value);
    int decimals = magnitude >= 1000 ? 0 : magnitude >= 100 ? 1 : magnitude >= 10 ? 2 : 3;
    String text = String.format(Locale.ROOT, "%." + decimals + "f", value);
    if (text.indexOf('.') >= 0) {
      text = text.replaceAll("0+$", "").replaceAll("\\.$", "");
    }
    return text.equals("-0") ? "0" : text;
  }

  private static double finite(double value, String text) {
    if (!Double.isFinite(value)) {
      throw new QuantityException("'" + text.strip() + "' is too large to be a quantity");
    }
    return value;
  }

  private static String wanted(Unit unit) {
    String example = unit.takesPrefix() ? "'1.5 " + unit.symbol() + "', '20 m" : "'1.5 ";
    return "write it like " + example + unit.symbol() + "'";
  }
}
