package railglow.run;

import railglow.journal.Entry;
import railglow.observed.Frame;
import railglow.observed.SupplyReading;
import railglow.thermal.Look;

/** Told how a run stands; must return at once. Called from several threads. */
public interface RunWatcher {
  /** A few times a second. */
  void onProgress(RunProgress progress);

  /** Something the operator must read. */
  void onMessage(String sentence);

  /**
   * A frame has arrived. It belongs to the caller again when this returns: copy what is needed, and
   * be quick about it.
   */
  default void onFrame(Frame frame) {}

  /** The supply was read and the reading judged; told on the supply keeper's thread. */
  default void onReading(SupplyReading reading) {}

  /** A cycle has ended and counts, or does not and says why. */
  default void onCycle(Entry.Cycle cycle) {}

  /** The data were looked at. Its planes are never changed again. */
  default void onLook(Look look) {}

  /** It is over, and this is what is known of the output. */
  default void onEnded(RunEnding ending) {}
}
