package railglow.sim.hand;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import railglow.units.Quantity;
import railglow.units.QuantityException;
import railglow.units.Unit;

/**
 * The probe on a point for a time. Between moves it is in the air.
 *
 * @param kind how it is held
 * @param point the part whose pad is touched
 * @param contactOhms when pressed well
 * @param startSeconds after the bench's start
 * @param endSeconds when it is lifted, or held in another way
 */
public record HandMove(
    Kind kind, String point, double contactOhms, double startSeconds, double endSeconds) {
  /** How the probe is held. */
  public enum Kind {
    /** Steady. */
    TOUCH,
    /** Making and breaking contact every few milliseconds. */
    BOUNCE,
    /** Sliding: the resistance swings up to twenty times the steady one. */
    SLIP
  }

  private static final double USUAL_OHMS = 0.030;
  private static final double BOUNCE_SECONDS = 0.008;
  private static final double SLIP_SECONDS = 0.12;
  private static final double OPEN_OHMS = 1e9;
  private static final Pattern TEXT =
      Pattern.compile("(touch|bounce|slip):([^=@\\s]+)(?:=([^@]+))?@(.+?)\\.\\.(.+)");

  public HandMove {
    if (!(startSeconds >= 0) || !(endSeconds > startSeconds)) {
      throw new IllegalArgumentException(
          "a hand can't hold from " + startSeconds + " s to " + endSeconds + " s");
    }
  }

  /**
   * Parses {@code KIND:POINT[=OHMS]@START..END}, for example {@code touch:C9=20mohm@3s..9s}.
   *
   * @throws QuantityException with a sentence that says what was wanted
   */
  public static HandMove parse(String text) {
    Matcher matcher = TEXT.matcher(text.strip());
    if (!matcher.matches()) {
      throw new QuantityException(
          "'"
              + text
              + "' is not a move; write it like 'touch:C9@3s..9s', with touch, bounce or slip");
    }
    double ohms =
        matcher.group(3) == null ? USUAL_OHMS : Quantity.parse(matcher.group(3), Unit.OHM);
    double start = Quantity.parse(matcher.group(4), Unit.SECOND);
    double end = Quantity.parse(matcher.group(5), Unit.SECOND);
    if (start < 0 || end <= start || ohms <= 0) {
      throw new QuantityException("the move '" + text + "' has no time or no resistance");
    }
    Kind kind = Kind.valueOf(matcher.group(1).toUpperCase(Locale.ROOT));
    return new HandMove(kind, matcher.group(2), ohms, start, end);
  }

  boolean holds(double seconds) {
    return seconds >= startSeconds && seconds < endSeconds;
  }

  /** Contact resistance at a time within the move. */
  double ohmsAt(double seconds) {
    double since = seconds - startSeconds;
    return switch (kind) {
      case TOUCH -> contactOhms;
      case BOUNCE -> closedInSlot((long) (since / BOUNCE_SECONDS)) ? contactOhms : OPEN_OHMS;
      case SLIP -> contactOhms * (1 + 19 * Math.pow(Math.sin(Math.PI * since / SLIP_SECONDS), 2));
    };
  }

  /** Looks random, is not. */
  private static boolean closedInSlot(long slot) {
    long mixed = (slot + 1) * 0x9E3779B97F4A7C15L;
    return (mixed >>> 60) % 2 == 0;
  }
}
