package railglow.config;

import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.regex.Pattern;

/**
 * Numbers as people write them: decimal, without the type letters, octal and named values that Java
 * would read too.
 */
final class PlainNumber {
  private static final Pattern REAL =
      Pattern.compile("[+-]?(?:[0-9]+\\.?[0-9]*|\\.[0-9]+)(?:[eE][+-]?[0-9]{1,4})?");
  private static final Pattern WHOLE = Pattern.compile("[+-]?(?:0|[1-9][0-9]{0,9})|0x[0-9a-fA-F]+");

  private PlainNumber() {}

  static OptionalDouble real(String text) {
    return REAL.matcher(text.strip()).matches()
        ? OptionalDouble.of(Double.parseDouble(text.strip()))
        : OptionalDouble.empty();
  }

  /** Also hexadecimal with {@code 0x}; a leading zero is refused, as it might mean octal. */
  static OptionalInt whole(String text) {
    if (!WHOLE.matcher(text.strip()).matches()) {
      return OptionalInt.empty();
    }
    try {
      return OptionalInt.of(Integer.decode(text.strip()));
    } catch (NumberFormatException e) {
      return OptionalInt.empty();
    }
  }
}
