package railglow.board;

import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What can be read from a part's printed value, such as "20 mohm", "10 uF 6.3 V" or "3 A". Pure.
 */
final class PartValue {
  private static final Pattern OHMS =
      Pattern.compile("(\\d+(?:\\.\\d+)?)\\s*(m|k|M|u)?\\s*(?:ohm|R|\u03a9)\\b.*");
  private static final Pattern VOLTS =
      Pattern.compile("(?:^|[\\s/,_])(\\d+(?:\\.\\d+)?)\\s*(k)?V(?:DC)?(?=$|[\\s/,_])");
  private static final Pattern AMPERES =
      Pattern.compile("(?:^|[\\s/,_])(\\d+(?:\\.\\d+)?)\\s*(m)?A(?=$|[\\s/,_])");

  private PartValue() {}

  /** A resistor's value; infinite when it can't be told. */
  static double ohms(String value) {
    Matcher matcher = OHMS.matcher(value.strip());
    if (!matcher.matches()) {
      return value.strip().matches("0+(\\.0+)?") ? 0 : Double.POSITIVE_INFINITY;
    }
    return Double.parseDouble(matcher.group(1)) * scale(matcher.group(2));
  }

  /** The voltage printed beside a capacitance. */
  static OptionalDouble ratedVolts(String value) {
    return first(VOLTS, value);
  }

  /** The current printed on a fuse or beside an inductance. */
  static OptionalDouble ratedAmperes(String value) {
    return first(AMPERES, value);
  }

  /**
   * What a chip resistor of this size may turn into heat at 70 degC; of the older and the newer
   * series the lower (1/20, 1/16, 1/16, 1/10, 1/8 W for 0201 to 1206, as makers print them).
   */
  static OptionalDouble chipResistorWatts(String packageName) {
    Matcher size =
        Pattern.compile("(?:^|\\D)(0201|0402|0603|0805|1206)(?:$|\\D)").matcher(packageName);
    if (!size.find()) {
      return OptionalDouble.empty();
    }
    return switch (size.group(1)) {
      case "0201" -> OptionalDouble.of(0.05);
      case "0402", "0603" -> OptionalDouble.of(0.0625);
      case "0805" -> OptionalDouble.of(0.1);
      default -> OptionalDouble.of(0.125);
    };
  }

  private static OptionalDouble first(Pattern pattern, String value) {
    Matcher matcher = pattern.matcher(value.strip());
    return matcher.find()
        ? OptionalDouble.of(Double.parseDouble(matcher.group(1)) * scale(matcher.group(2)))
        : OptionalDouble.empty();
  }

  private static double scale(String prefix) {
    return switch (prefix == null ? "" : prefix) {
      case "m" -> 1e-3;
      case "u" -> 1e-6;
      case "k" -> 1e3;
      case "M" -> 1e6;
      default -> 1;
    };
  }
}
