package railglow.report;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;
import railglow.units.Quantity;
import railglow.units.Unit;

/** Numbers as a reader of reports wants them. Stateless. */
final class Words {
  static final String SUPERSCRIPTS = "\u2070\u00b9\u00b2\u00b3\u2074\u2075\u2076\u2077\u2078\u2079";

  private Words() {}

  /** A rise with three digits, in kelvin, or in counts where the camera has no scale. */
  static String rise(double value, String unit) {
    double rounded =
        Double.isFinite(value)
            ? new BigDecimal(value).round(new MathContext(3)).doubleValue()
            : value;
    return Quantity.format(rounded, unit.equals("K") ? Unit.KELVIN : Unit.COUNT);
  }

  /** A probability with two digits: 0.031 or 3.0 x 10^-12. */
  static String probability(double p) {
    if (Double.isNaN(p)) {
      return "unknown";
    }
    if (p == 0) {
      return "below 10" + superscript(-300);
    }
    if (p >= 0.00095) {
      return String.format(Locale.ROOT, p >= 0.0995 ? "%.2f" : "%.3f", p);
    }
    int exponent = (int) Math.floor(Math.log10(p));
    String digits = String.format(Locale.ROOT, "%.1f", p / Math.pow(10, exponent));
    if (digits.equals("10.0")) {
      digits = "1.0";
      exponent++;
    }
    return digits + " \u00d7 10" + superscript(exponent);
  }

  private static String superscript(int exponent) {
    StringBuilder text = new StringBuilder(exponent < 0 ? "\u207b" : "");
    for (char digit : Integer.toString(Math.abs(exponent)).toCharArray()) {
      text.append(SUPERSCRIPTS.charAt(digit - '0'));
    }
    return text.toString();
  }

  /** A value with its 95 % half-width: 61.7 ± 0.4. */
  static String plusMinus(double value, double variance) {
    double half = 1.96 * Math.sqrt(Math.max(0, variance));
    int decimals = half >= 1 ? 1 : 2;
    return String.format(
        Locale.ROOT, "%." + decimals + "f \u00b1 %." + decimals + "f", value, half);
  }

  static String percent(double share) {
    return String.format(Locale.ROOT, "%.0f %%", 100 * share);
  }

  /** Ten significant digits at most, no trailing zeros. */
  static String plain(double value) {
    return new BigDecimal(value).round(new MathContext(10)).stripTrailingZeros().toPlainString();
  }
}
