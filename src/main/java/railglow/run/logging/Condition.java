package railglow.run.logging;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import railglow.units.Quantity;
import railglow.units.QuantityException;
import railglow.units.Unit;

/**
 * Something to wait for: a value above or below a bound, or a step of it within a second.
 * Immutable.
 *
 * @param text as it was typed
 * @param place its number; -1 for values of the supply and of the whole picture
 */
public record Condition(String text, Watched watched, int place, Kind kind, double bound) {
  /** What is watched. */
  public enum Watched {
    VOLTAGE(Unit.VOLT),
    CURRENT(Unit.AMPERE),
    POWER(Unit.WATT),
    HOTTEST(Unit.CELSIUS),
    RISE(Unit.KELVIN);

    private final Unit unit;

    Watched(Unit unit) {
      this.unit = unit;
    }

    boolean isOfSupply() {
      return this == VOLTAGE || this == CURRENT || this == POWER;
    }
  }

  /** How. */
  public enum Kind {
    ABOVE,
    BELOW,
    /** Differs by the bound or more from its mean in the second before. */
    STEP
  }

  private static final Pattern FORM =
      Pattern.compile("(.+?)\\s+(above|below|step)\\s+(.+)", Pattern.CASE_INSENSITIVE);
  private static final String RIGHT =
      "write for example 'current step 50 mA', 'power above 1 W', 'hottest above 45 degC', 'rise above"
          + " 2 K', 'C37 above 40 degC' or 'C37 rise above 2 K'";

  /**
   * Reads a condition as it is typed.
   *
   * @param places the names of what is followed
   * @throws IllegalArgumentException with one sentence that says what is wrong and what is right
   */
  public static Condition parse(String text, List<String> places) {
    Matcher matcher = FORM.matcher(text.strip());
    if (!matcher.matches()) {
      throw new IllegalArgumentException("the condition '" + text + "' is not known; " + RIGHT);
    }
    String what = matcher.group(1).strip();
    Kind kind = Kind.valueOf(matcher.group(2).toUpperCase(Locale.ROOT));
    Optional<Watched> whole = watched(what);
    boolean riseOfPlace = what.toLowerCase(Locale.ROOT).endsWith(" rise");
    String name = riseOfPlace ? what.substring(0, what.length() - 5).strip() : what;
    int place = whole.isPresent() ? -1 : place(name, places);
    if (whole.isEmpty() && place < 0) {
      throw new IllegalArgumentException(
          "the condition '"
              + text
              + "' watches '"
              + name
              + "', which is neither voltage, current, power, hottest, rise nor one of the places "
              + places
              + "; "
              + RIGHT);
    }
    Watched watched = whole.orElse(riseOfPlace ? Watched.RISE : Watched.HOTTEST);
    Unit unit = kind == Kind.STEP && watched == Watched.HOTTEST ? Unit.KELVIN : watched.unit;
    try {
      double bound = Quantity.parse(matcher.group(3), unit);
      if (kind == Kind.STEP && !(bound > 0)) {
        throw new IllegalArgumentException("the condition '" + text + "' needs a step above zero");
      }
      return new Condition(text.strip(), watched, place, kind, bound);
    } catch (QuantityException e) {
      throw new IllegalArgumentException("the condition '" + text + "': " + e.getMessage(), e);
    }
  }

  private static Optional<Watched> watched(String word) {
    for (Watched watched : Watched.values()) {
      if (watched.name().equalsIgnoreCase(word)) {
        return Optional.of(watched);
      }
    }
    return Optional.empty();
  }

  private static int place(String name, List<String> places) {
    for (int i = 0; i < places.size(); i++) {
      if (places.get(i).equalsIgnoreCase(name)) {
        return i;
      }
    }
    return -1;
  }

  /** A value in the condition's unit. */
  String format(double value) {
    return Quantity.format(
        value, kind == Kind.STEP && watched == Watched.HOTTEST ? Unit.KELVIN : watched.unit);
  }
}
