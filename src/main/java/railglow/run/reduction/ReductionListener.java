package railglow.run.reduction;

import railglow.journal.Entry;
import railglow.observed.Frame;
import railglow.thermal.Look;

/** Told by a reduction what it did, on the thread that feeds it. */
public interface ReductionListener {
  void onCycle(Entry.Cycle cycle);

  void onLook(Look look, long nowNanos);

  /** The scene was moved and not found again: what comes can't be compared; told once. */
  default void onPlaceLost(long nowNanos) {}

  /** Something a reader of the record should know of the frames, in one sentence. */
  default void onNote(String sentence, long nowNanos) {}

  /** The frame is not needed any more; its ownership goes to the listener. */
  void onReleased(Frame frame);
}
