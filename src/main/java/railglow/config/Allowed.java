package railglow.config;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import railglow.units.Quantity;
import railglow.units.Unit;

/** Says in words what a key allows. */
final class Allowed {
  private Allowed() {}

  static Optional<Boolean> yesOrNo(String text) {
    return switch (text.toLowerCase(Locale.ROOT)) {
      case "yes", "true" -> Optional.of(true);
      case "no", "false" -> Optional.of(false);
      default -> Optional.empty();
    };
  }

  static String range(double low, double high, Unit unit) {
    if (high == Double.POSITIVE_INFINITY) {
      return "at least " + Quantity.format(low, unit);
    }
    return Quantity.format(low, unit) + " to " + Quantity.format(high, unit);
  }

  /** An enum's constant as users write it. */
  static String dashed(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  static <E extends Enum<E>> List<String> names(Class<E> type) {
    return Arrays.stream(type.getEnumConstants()).map(Allowed::dashed).toList();
  }
}
