package railglow.run.reduction;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import railglow.journal.Entry;

/** The cycles in which a held probe slipped. Not thread-safe. */
public final class SwungCycles {
  /** So begins the reason of such a cycle. */
  public static final String CONTACT = "the contact";

  private final Map<Integer, Entry.ContactSwung> swung = new HashMap<>();

  /**
   * @param cycle its index; negative outside all cycles, which is nobody's
   */
  void note(int cycle, Entry.ContactSwung entry) {
    if (cycle >= 0) {
      swung.putIfAbsent(cycle, entry);
    }
  }

  /** Why a cycle does not count: what spoiled it already, or the contact; empty when neither. */
  String reason(int cycle, String spoiled) {
    Entry.ContactSwung entry = swung.get(cycle);
    return spoiled.isEmpty() && entry != null
        ? String.format(
            Locale.ROOT,
            CONTACT + " swung between %.3g and %.3g ohm",
            entry.lowestOhms(),
            entry.highestOhms())
        : spoiled;
  }
}
