package railglow.report;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;
import railglow.units.Quantity;
import railglow.units.Unit;

/** Numbers as a reader of reports wants them. Stateless. */
final class Words {
  private Words() {}

  /** A rise with three digits, in kelvin, or in counts where the camera has no scale. */
  static String rise(double value, String unit) {
    double rounded =
        Double.isFinite(value)
            ? new BigDecimal(value).round(new MathContext(3)).doubleValue()
            : value;
    return Quantity.format(rounded, unit.equals("K") ? Unit.KELVIN : Unit.COUNT);
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
