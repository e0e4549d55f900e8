package railglow.run;

import java.util.Optional;
import railglow.journal.Entry;
import railglow.observed.SupplyReading;

/** Watches each reading for a contact that is not held. Called on the supply keeper's thread. */
public interface ContactNotes {
  /** Leads that are clipped or soldered on: nothing is watched for. */
  ContactNotes NONE = reading -> Optional.empty();

  /**
   * Takes the next reading.
   *
   * @return what is to be recorded before it, so that a replay finds it at the same place
   */
  Optional<Entry.ContactSwung> take(SupplyReading reading);
}
