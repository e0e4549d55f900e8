package railglow.run;

import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import railglow.journal.Entry;
import railglow.observed.Edge;
import railglow.observed.OutputState;
import railglow.observed.SupplyReading;
import railglow.safety.Stop;
import railglow.supply.SupplyListener;

/**
 * Hands what the keeper saw to those who want it: the scribe, the cruncher, and whoever looks at
 * the newest values. Called by the keeper's thread, read by any.
 */
public final class SupplyEvents implements SupplyListener {
  private final RunWatcher watcher;
  private final ContactNotes contact;
  private final Queue<Entry> unread = new ConcurrentLinkedQueue<>();
  private volatile Scribe scribe;
  private volatile SupplyReading latest;
  private volatile OutputState output = OutputState.UNKNOWN;

  /** For leads that stay where they are. */
  public SupplyEvents(RunWatcher watcher) {
    this(watcher, ContactNotes.NONE);
  }

  public SupplyEvents(RunWatcher watcher, ContactNotes contact) {
    this.watcher = watcher;
    this.contact = contact;
  }

  /** From now on everything is also recorded, and kept for the cruncher. */
  public void recordWith(Scribe newScribe) {
    scribe = newScribe;
  }

  @Override
  public void onReading(SupplyReading reading) {
    latest = reading;
    watcher.onReading(reading);
    contact.take(reading).ifPresent(this::record);
    record(new Entry.Reading(reading));
  }

  @Override
  public void onEdge(Edge edge) {
    record(new Entry.EdgeMade(edge));
  }

  @Override
  public void onOutputState(OutputState state, long nowNanos) {
    output = state;
    Scribe to = scribe;
    if (to != null) {
      to.post(new Entry.Output(nowNanos, state));
    }
  }

  @Override
  public void onFurtherBreach(Stop stop) {
    note(stop.nanos(), "also seen: " + stop.cause() + ", " + stop.evidence());
  }

  @Override
  public void onWarning(String sentence, long nowNanos) {
    note(nowNanos, sentence);
    watcher.onMessage(sentence);
  }

  /** The next event the cruncher has not taken; null when there is none. */
  public Entry poll() {
    return unread.poll();
  }

  /** Null before the first. */
  public SupplyReading latest() {
    return latest;
  }

  public OutputState output() {
    return output;
  }

  private void note(long nanos, String text) {
    Scribe to = scribe;
    if (to != null) {
      to.post(new Entry.Note(nanos, text));
    }
  }

  private void record(Entry entry) {
    Scribe to = scribe;
    if (to != null) {
      unread.add(entry);
      to.post(entry);
    }
  }
}
