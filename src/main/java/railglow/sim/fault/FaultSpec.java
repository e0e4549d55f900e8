package railglow.sim.fault;

import java.util.Arrays;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import railglow.units.Quantity;
import railglow.units.QuantityException;
import railglow.units.Unit;

/**
 * One fault with its value and time.
 *
 * @param value in the unit of its kind; NaN when the kind has none
 * @param afterOn whether the times count from the first switch-on of the output instead of from the
 *     bench's start
 * @param startSeconds when it begins, or happens
 * @param endSeconds when it ends; infinite for never
 */
public record FaultSpec(
    FaultKind kind, double value, boolean afterOn, double startSeconds, double endSeconds) {
  private static final Pattern TEXT =
      Pattern.compile(
          "([a-zA-Z-]+)(?:=([^@]+))?(?:@(on\\+)?([^.@]+(?:\\.\\d[^.@]*)?)(?:\\.\\.(.+))?)?");

  public FaultSpec {
    if (!(startSeconds >= 0) || !(endSeconds > startSeconds)) {
      throw new IllegalArgumentException(
          "a fault can't last from " + startSeconds + " s to " + endSeconds + " s");
    }
  }

  /** From the start, for good, with its usual value. */
  public static FaultSpec always(FaultKind kind) {
    return new FaultSpec(kind, kind.defaultValue(), false, 0, Double.POSITIVE_INFINITY);
  }

  public FaultSpec withValue(double newValue) {
    return new FaultSpec(kind, newValue, afterOn, startSeconds, endSeconds);
  }

  public FaultSpec from(double seconds) {
    return new FaultSpec(kind, value, false, seconds, endSeconds);
  }

  public FaultSpec fromFirstOnPlus(double seconds) {
    return new FaultSpec(kind, value, true, seconds, endSeconds);
  }

  public FaultSpec until(double seconds) {
    return new FaultSpec(kind, value, afterOn, startSeconds, seconds);
  }

  /**
   * Parses {@code KIND[=VALUE][@[on+]START[..END]]}, for example {@code runaway@12s}, {@code
   * late-reply=800ms@5s..7s} or {@code drop-connection@on+3s}.
   *
   * @throws QuantityException with a sentence that says what was wanted
   */
  public static FaultSpec parse(String text) {
    Matcher matcher = TEXT.matcher(text.strip());
    if (!matcher.matches()) {
      throw new QuantityException(
          "'"
              + text
              + "' is not a fault; write it like 'runaway@12s' or 'late-reply=800ms@5s..7s'");
    }
    FaultKind kind = kind(matcher.group(1));
    double value = kind.defaultValue();
    if (matcher.group(2) != null) {
      if (kind.unit() == null) {
        throw new QuantityException("the fault " + kind.written() + " takes no value");
      }
      value = Quantity.parse(matcher.group(2), kind.unit());
    }
    double start = matcher.group(4) == null ? 0 : seconds(matcher.group(4));
    double end = matcher.group(5) == null ? Double.POSITIVE_INFINITY : seconds(matcher.group(5));
    if (start < 0 || end <= start) {
      throw new QuantityException("the fault '" + text + "' ends before it begins");
    }
    return new FaultSpec(kind, value, matcher.group(3) != null, start, end);
  }

  private static double seconds(String text) {
    return Quantity.parse(text, Unit.SECOND);
  }

  private static FaultKind kind(String written) {
    for (FaultKind kind : FaultKind.values()) {
      if (kind.written().equalsIgnoreCase(written)) {
        return kind;
      }
    }
    String known =
        Arrays.stream(FaultKind.values()).map(FaultKind::written).collect(Collectors.joining(", "));
    throw new QuantityException("there is no fault '" + written + "'; known are " + known);
  }

  /** The form that {@link #parse} reads. */
  public String written() {
    StringBuilder text = new StringBuilder(kind.written());
    if (kind.unit() != null) {
      text.append('=').append(value).append(kind.unit().symbol());
    }
    text.append('@').append(afterOn ? "on+" : "").append(startSeconds).append('s');
    if (Double.isFinite(endSeconds)) {
      text.append("..").append(endSeconds).append('s');
    }
    return text.toString();
  }
}
