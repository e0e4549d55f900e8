package railglow.scpi;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalInt;

/**
 * Suffixes of numbers: a multiplier, a unit, or both, in any case (IEEE 488.2, 7.7.3).
 *
 * <p>{@code M} is milli and {@code MA} mega, except that {@code MHZ} and {@code MOHM} are mega. The
 * unit is looked for first, so {@code MA} on a current is milliampere. Where a unit is expected, a
 * multiplier without it is read only if it cannot be taken for ampere or farad. Because of these
 * traps this program never sends a suffix.
 */
final class Suffix {
  private static final Map<String, Integer> EXPONENTS = new LinkedHashMap<>();

  static {
    String[] names = {"EX", "PE", "T", "G", "MA", "K", "M", "U", "N", "P", "F", "A"};
    int[] exponents = {18, 15, 12, 9, 6, 3, -3, -6, -9, -12, -15, -18};
    for (int i = 0; i < names.length; i++) {
      EXPONENTS.put(names[i], exponents[i]);
    }
  }

  private Suffix() {}

  /**
   * The power of ten a suffix stands for.
   *
   * @param unit in upper case, empty if there is none
   * @return empty if the suffix is not one of that unit
   */
  static OptionalInt exponent(String suffix, String unit) {
    String upper = suffix.toUpperCase(Locale.ROOT);
    if (upper.equals(unit)) {
      return OptionalInt.of(0);
    }
    if (upper.equals("MHZ") && unit.equals("HZ") || upper.equals("MOHM") && unit.equals("OHM")) {
      return OptionalInt.of(6);
    }
    if (!unit.isEmpty() && upper.endsWith(unit)) {
      Integer exponent = EXPONENTS.get(upper.substring(0, upper.length() - unit.length()));
      if (exponent != null) {
        return OptionalInt.of(exponent);
      }
    }
    boolean looksLikeUnit = upper.endsWith("A") || upper.endsWith("F");
    Integer bare = unit.isEmpty() || !looksLikeUnit ? EXPONENTS.get(upper) : null;
    return bare == null ? OptionalInt.empty() : OptionalInt.of(bare);
  }

  /** value x 10^exponent, rounded once, so that 28E-3 K is exactly 28. */
  static double scale(double value, int exponent) {
    return Double.isFinite(value)
        ? BigDecimal.valueOf(value).scaleByPowerOfTen(exponent).doubleValue()
        : value;
  }
}
