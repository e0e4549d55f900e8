package railglow.safety;

import java.util.Locale;
import java.util.Optional;

/**
 * A thing that protects the board when something else fails. Where one is missing, an energetic
 * sequence is refused unless the bench file accepts its absence by name.
 */
public enum Protection {
  OVER_VOLTAGE_PROTECTION(true, "nothing in the supply itself cuts a voltage above the plan"),
  OVER_CURRENT_PROTECTION(true, "nothing in the supply itself cuts a current above the plan"),
  OUTPUT_READ_BACK(true, "off can only be judged by the measured volts and amperes"),
  SETTINGS_READ_BACK(true, "a level or limit the supply did not take can't be noticed"),
  REGULATION_STATUS(true, "a change between constant voltage and constant current goes unseen"),
  TRIP_STATUS(true, "a trip of the supply's own protection shows only as an output gone off"),
  ERROR_QUEUE(true, "a command the supply refused can't be noticed by its own words"),
  /** A second process with its own way to the supply. */
  COMPANION(true, "when this program dies, only the supply itself can switch its output off"),
  /** A timer in the supply. Few have one, so its absence is listed but never refused. */
  SUPPLY_WATCHDOG(false, "when the computer dies, the output stays as it is");

  private final boolean demanded;
  private final String without;

  Protection(boolean demanded, String without) {
    this.demanded = demanded;
    this.without = without;
  }

  /** Whether an energetic sequence is refused without it. */
  public boolean isDemanded() {
    return demanded;
  }

  /** What its absence means, as the end of a sentence. */
  public String without() {
    return without;
  }

  /** As written in a bench file, for example {@code over-current-protection}. */
  public String key() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  public static Optional<Protection> byKey(String key) {
    for (Protection protection : values()) {
      if (protection.key().equals(key.strip())) {
        return Optional.of(protection);
      }
    }
    return Optional.empty();
  }
}
