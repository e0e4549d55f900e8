package railglow.run.ladder;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import railglow.supply.ChannelAbility;
import railglow.units.Quantity;
import railglow.units.Unit;

/**
 * How far one step's readings may be off against the next step's, besides their scatter: one digit
 * of the read-back. What is off alike at every step (the meter's accuracy) is no part of it.
 *
 * @param volts standard deviation
 * @param amperes standard deviation, above 0
 * @param from where the figures are known from, in words
 */
public record ReadBack(double volts, double amperes, String from) {
  /** Where nothing is stated; what bench supplies read back to by common practice, no source. */
  public static final ReadBack USUAL =
      new ReadBack(1e-3, 1e-3, "supposed: common practice, no source");

  private static final Pattern FORM =
      Pattern.compile("each step's reading is known to (\\S+) V and (\\S+) A \\((.*)\\)");

  /** As a supply's descriptor states it. */
  public static ReadBack of(ChannelAbility channel) {
    if (channel.voltsReadStep() > 0 && channel.amperesReadStep() > 0) {
      return new ReadBack(
          channel.voltsReadStep(),
          channel.amperesReadStep(),
          "one digit of the read-back by the supply's descriptor");
    }
    double volts = stated(channel.voltsReadStep(), channel.voltsStep());
    double amperes = stated(channel.amperesReadStep(), channel.amperesStep());
    return volts > 0 && amperes > 0
        ? new ReadBack(
            volts,
            amperes,
            "one step of the setting: the supply's descriptor does not state the read-back's digit")
        : USUAL;
  }

  private static double stated(double readStep, double setStep) {
    return readStep > 0 ? readStep : setStep;
  }

  /** One sentence for the operator. */
  public String sentence() {
    return "each step is taken to "
        + Quantity.format(volts, Unit.VOLT)
        + " and "
        + Quantity.format(amperes, Unit.AMPERE)
        + " ("
        + from
        + "), and its readings' scatter.";
  }

  /** The journal's line; every bit of the numbers returns. */
  String note() {
    return String.format(
        Locale.ROOT, "each step's reading is known to %s V and %s A (%s)", volts, amperes, from);
  }

  /** What a line of the journal says; empty when it says something else. */
  static Optional<ReadBack> ofNote(String text) {
    Matcher matcher = FORM.matcher(text);
    try {
      return matcher.matches()
          ? Optional.of(
              new ReadBack(
                  Double.parseDouble(matcher.group(1)),
                  Double.parseDouble(matcher.group(2)),
                  matcher.group(3)))
          : Optional.empty();
    } catch (NumberFormatException e) {
      return Optional.empty();
    }
  }
}
